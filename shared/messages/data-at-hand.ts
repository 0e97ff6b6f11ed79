/** What the page says of a notebook's data files that are missing or have changed. */

export const missingFile = (file: string): string =>
  `${file} is not at hand here, and this notebook reads it. Find it, and the cells that read it go on.`;
export const missingFiles = (count: number): string =>
  `${count} data files that this notebook reads are not at hand here. Find them, and the cells that read them go on.`;
export const changedFile = (file: string): string =>
  `${file} is not as it was when this notebook was saved. The results below are those of the file as it is now.`;
export const findFile = (): string => 'Find the file …';
export const findFileNamed = (file: string): string => `Find the file …: ${file}`;
export const findTogether = (): string => 'Choose them together …';
export const findOther = (): string => 'Find the earlier file …';
export const findOtherNamed = (file: string): string => `Find the earlier file …: ${file}`;
export const takeAsItIs = (): string => 'Use it as it is now';
export const takeAsItIsNamed = (file: string): string => `Use it as it is now: ${file}`;
export const notAmongMissing = (chosen: string, missing: string): string =>
  `${chosen} bears none of the names that are missing (${missing}); nothing was changed. Choose it with the button beside the name it stands for.`;
