/** So long a browser may take to begin printing; one that cannot print never does (firefox-ios issue 8274). */
const patienceMs = 1000;

/** Opens the phone's print sheet; false where nothing comes of it. */
export function printPage(): Promise<boolean> {
  return new Promise((resolve) => {
    const began = (): void => resolve(true);
    addEventListener('beforeprint', began, { once: true });
    setTimeout(() => {
      removeEventListener('beforeprint', began);
      resolve(false);
    }, patienceMs);
    if (typeof globalThis.print === 'function') globalThis.print();
  });
}

/** Pictures that are still being read would be missing on paper. */
export async function picturesShown(): Promise<void> {
  await Promise.all([...document.images].map((image) => image.decode().catch(() => undefined)));
}

/** A text as a string of CSS, whatever is in it. */
const cssString = (text: string): string =>
  `"${text.replace(/["\\\p{Cc}]/gu, (each) => `\\${each.codePointAt(0)?.toString(16) ?? ''} `)}"`;

/** Gives the margins of the pages what they say; taken back by the function that comes back. */
export function setMargins(running: string, pages: readonly [before: string, between: string]): () => void {
  const { style } = document.documentElement;
  const texts = { '--running': running, '--page': pages[0], '--of': pages[1] };
  for (const [name, text] of Object.entries(texts)) style.setProperty(name, cssString(text));
  return () => {
    for (const name of Object.keys(texts)) style.removeProperty(name);
  };
}

/** Says on which paper the page is printed, to the style of the whole page; taken back by the function that comes back. */
export function setPaper(paper: string): () => void {
  document.body.dataset['paper'] = paper;
  return () => {
    delete document.body.dataset['paper'];
  };
}
