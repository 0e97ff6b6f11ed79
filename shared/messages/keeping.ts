/** What the page says of notebooks that the browser keeps. */

export const offersHead = (count: number): string =>
  count === 1 ? 'A notebook is kept from before' : `${count} notebooks are kept from before`;
export const offered = (title: string, when: string, isSaved: boolean): string =>
  `${title === '' ? 'Untitled notebook' : title}, last changed ${when}, ${isSaved ? 'saved as a file since' : 'not saved as a file since'}.`;
export const withFiles = (kept: number, size: string, asked: string): string => {
  const own = kept === 0 ? '' : `${kept} data ${kept === 1 ? 'file is' : 'files are'} kept with it (${size}).`;
  return asked === '' ? own : `${own} You will be asked for ${asked}.`.trim();
};
export const openAgain = (): string => 'Open it again';
export const openAgainNamed = (title: string): string => `Open it again: ${title}`;
export const dropIt = (): string => 'Drop it';
export const dropItNamed = (title: string): string => `Drop it: ${title}`;
export const dropForGood = (): string => 'Drop it for good';
export const keepIt = (): string => 'Keep it';
export const gone = (title: string): string =>
  `${title} is no longer kept by this browser; open it from the file that was saved.`;
export const notKept = (cause: string): string =>
  `This browser does not keep the notebook (${cause}). Save it as a file before you close or reload the page.`;
export const today = (clock: string): string => `today at ${clock}`;
export const opening = (title: string): string => `Opening ${title} again …`;
