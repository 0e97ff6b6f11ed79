type Turn = (go: () => void) => void;

/** Nested timers wait 4 ms in browsers, so a message to oneself stands in there; Node has setImmediate. */
function chooseTurn(): Turn {
  const { setImmediate } = globalThis as { setImmediate?: (go: () => void) => unknown };
  if (setImmediate) return (go) => void setImmediate(go);
  const channel = new MessageChannel();
  const waiting: (() => void)[] = [];
  channel.port1.onmessage = () => waiting.shift()?.();
  return (go) => {
    waiting.push(go);
    channel.port2.postMessage(0);
  };
}

let turn: Turn | undefined;

/** Lets every waiting message and timer run before the caller goes on. */
export function yieldTurn(): Promise<void> {
  turn ??= chooseTurn();
  const go = turn;
  return new Promise((resolve) => go(resolve));
}
