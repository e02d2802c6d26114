/** Only iOS says so itself; undefined elsewhere. */
const iosStandalone = (navigator as { readonly standalone?: boolean }).standalone;

export const isIos = iosStandalone !== undefined;

/** True when the app was opened from the home screen, or as a window of its own. */
export const isInstalled = (): boolean =>
  iosStandalone === true || matchMedia('(display-mode: standalone)').matches;
