/** Settings and about. */
export const settings = {
  title: 'Settings',
  units: 'Units',
  depthUnit: 'Small sizes: lugs, grousers, cracks',
  lengthUnit: 'Long sizes: sag, pitch, tapes',
  massUnit: 'Mass',
  storage: 'Storage',
  used: (size: string): string => `${size} used`,
  megabytes: (count: string): string => `${count} MB`,
  askToKeep: 'Ask the browser to keep the data',
  about: 'About',
  build: (id: string): string => `version ${id}`,
} as const;

/** Update, install and offline. */
export const shell = {
  updateReady: 'A new version is ready.',
  updateNow: 'Take it now',
  updateLater: 'Later',
  updateInWalk: 'A new version is ready. It waits until the walk is finished.',
  offlineReady: 'Ready: Sagline now works with no network.',
  install: 'Install on this phone',
  installHint: 'Installed, it opens from the home screen and works with no network.',
  installMenu: 'In the menu of the browser: “Install” or “Add to Home screen”.',
  installIos: 'Share button, then “Add to Home Screen”.',
  brokenTitle: 'Something went wrong here',
  brokenLine: 'What was shown as saved is still saved. Load the page again to go on.',
  reload: 'Load again',
} as const;

/** The demo. */
export const demo = {
  title: 'Demo machine',
  invented: 'Everything here is invented: site, machine, people and readings.',
  remove: 'Remove the demo',
  removed: 'Demo removed',
  apart: 'The demo never mixes with your data.',
} as const;
