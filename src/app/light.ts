/** By day, by night, or as the device says; kept on this computer. */
export type Light = 'device' | 'day' | 'night';

const KEY = 'between-visits-light';
const ORDER: readonly Light[] = ['device', 'day', 'night'];

export function readLight(): Light {
  try {
    const kept = localStorage.getItem(KEY);
    return ORDER.find((light) => light === kept) ?? 'device';
  } catch {
    // Storage is shut in some private windows; the device's own setting serves.
    return 'device';
  }
}

export const nextLight = (light: Light): Light => ORDER[(ORDER.indexOf(light) + 1) % ORDER.length];

/** Puts it on the page and tells the pictures to take the new colours. */
export function showLight(light: Light): void {
  if (light === 'device') delete document.documentElement.dataset['light'];
  else document.documentElement.dataset['light'] = light;
  try {
    localStorage.setItem(KEY, light);
  } catch {
    // As above: it then holds until the page is closed.
  }
  document.dispatchEvent(new CustomEvent('bv-light'));
}
