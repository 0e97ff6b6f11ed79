/** Drawing goes on in one task for at most so long; what is left waits for the next, and input comes in between. */
const TURN_MS = 10;

let began = -1;
const waiting: (() => void)[] = [];

/**
 * Undefined where there is still time in this task, else a promise of a later one. Elements that draw much ask it before
 * each update, so that a page of large sheets never draws all of them in one breath.
 */
export function takeTurn(): Promise<void> | undefined {
  const now = performance.now();
  if (began < 0) {
    began = now;
    next(endTurn);
  }
  if (waiting.length === 0 && now - began < TURN_MS) return undefined;
  return new Promise((resolve) => {
    waiting.push(resolve);
  });
}

function endTurn(): void {
  began = waiting.length > 0 ? performance.now() : -1;
  const first = waiting.shift();
  if (!first) return;
  next(endTurn);
  first();
}

/** A task of its own behind whatever the browser has to do first; timers would be slowed down. */
const channel = new MessageChannel();
let then: (() => void) | undefined;
channel.port1.onmessage = () => then?.();
function next(act: () => void): void {
  then = act;
  channel.port2.postMessage(undefined);
}
