/** Rows to a block: 16 kB a buffer, so that the buffers in use stay in the processor's cache. */
export const BLOCK_ROWS = 2048;
