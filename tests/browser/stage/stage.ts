import { views } from '../../../cells/views.ts';
import '../../../src/app/elements/page-shell.ts';
import type { PageShell } from '../../../src/app/elements/page-shell.ts';
import { InventedSession, type StageState } from './invented-session.ts';

const wanted = new URLSearchParams(location.search).get('state') ?? 'done';
const page = document.querySelector<PageShell>('bv-page');
if (page) {
  page.views = views;
  page.opener = {
    sample: () => {
      if (wanted === 'loading') return new Promise(() => {});
      if (wanted === 'refused')
        return Promise.reject(new Error('register.csv of the sample campus was not served (status 404).'));
      return Promise.resolve(new InventedSession(wanted as StageState));
    },
    kept: () => Promise.reject(new Error('nothing is kept on the stage')),
    own: () =>
      Promise.reject(
        new Error('north.csv holds no usable column; found "a, b, c". Choose the file that the analyzer exported.'),
      ),
  };
  void page.start();
}
