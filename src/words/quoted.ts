const longest = 80;

/**
 * Text of a stranger between quotation marks: short enough that it cannot bury our own words, and without what
 * would steer a terminal or turn the direction of writing.
 */
export function quoted(text: string): string {
  const plain = text.replace(/\p{C}/gu, '\ufffd');
  return `“${plain.length > longest ? `${plain.slice(0, longest)}…` : plain}”`;
}
