export { sheetView as view } from '../parts/sheet-view.ts';
