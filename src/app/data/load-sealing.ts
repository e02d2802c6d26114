/** The screens of the seal, as one file that is loaded when the first of them is wanted. */
export const loadSealing = () =>
  import('../sealing/sealing-screens.ts').then(({ sealingScreens }) => sealingScreens);
