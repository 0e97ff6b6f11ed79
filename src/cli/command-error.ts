/** Ends a command with one line on stderr and an exit code; 2 stands for usage, files and questions. */
export class CommandError extends Error {
  readonly code: number;

  constructor(message: string, code = 2) {
    super(message);
    this.code = code;
  }
}
