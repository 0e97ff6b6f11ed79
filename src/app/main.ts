import { views } from '../../cells/views.ts';
import type { PageShell } from './elements/page-shell.ts';
import './elements/page-shell.ts';
import { openKept } from './open-kept.ts';
import { openOwnFiles } from './open-own-files.ts';
import { openSample } from './open-sample.ts';

const page = document.querySelector<PageShell>('bv-page');
if (page) {
  page.views = views;
  page.opener = { sample: openSample, own: openOwnFiles, kept: openKept };
  void page.start();
}
