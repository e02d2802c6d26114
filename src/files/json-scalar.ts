/** What is wrong with a text that should be JSON, and at which character. */
export type ScanFault =
  | { readonly kind: 'truncated' | 'not-json' | 'too-deep' | 'too-many'; readonly at: number }
  | { readonly kind: 'repeated-name' | 'forbidden-name'; readonly at: number; readonly name: string };

/** The character behind a piece of JSON, or why there is none. */
export type End = number | ScanFault;

const quote = 0x22;
const backslash = 0x5c;
const hexDigits = /^[0-9a-fA-F]*$/;

/** What is wrong at the end of a text is that it breaks off there. */
export const faultAt = (text: string, at: number): ScanFault => ({
  kind: at >= text.length ? 'truncated' : 'not-json',
  at,
});

/** Where a text, number, true, false or null that starts here ends. */
export function scalarEnd(text: string, start: number): End {
  switch (text[start]) {
    case '"':
      return stringEnd(text, start);
    case 't':
      return wordEnd(text, start, 'true');
    case 'f':
      return wordEnd(text, start, 'false');
    case 'n':
      return wordEnd(text, start, 'null');
    default:
      return numberEnd(text, start);
  }
}

function wordEnd(text: string, start: number, word: string): End {
  for (let i = 0; i < word.length; i += 1) {
    if (text[start + i] !== word[i]) return faultAt(text, start + i);
  }
  return start + word.length;
}

/** Past the closing quote of a text whose opening one is at `start`. */
export function stringEnd(text: string, start: number): End {
  if (text[start] !== '"') return faultAt(text, start);
  let at = start + 1;
  for (;;) {
    const code = text.charCodeAt(at);
    if (code === quote) return at + 1;
    if (code === backslash) {
      const end = escapeEnd(text, at + 1);
      if (typeof end !== 'number') return end;
      at = end;
    } else if (code >= 0x20) at += 1;
    // A control character, or past the end, where the code is NaN.
    else return faultAt(text, at);
  }
}

function escapeEnd(text: string, at: number): End {
  const letter = text.charAt(at);
  if (letter === '') return faultAt(text, at);
  if (letter !== 'u') return '"\\/bfnrt'.includes(letter) ? at + 1 : faultAt(text, at);
  const digits = text.slice(at + 1, at + 5);
  if (!hexDigits.test(digits)) return faultAt(text, at + 1);
  return digits.length === 4 ? at + 5 : faultAt(text, text.length);
}

function numberEnd(text: string, start: number): End {
  const first = text[start] === '-' ? start + 1 : start;
  // Nothing may follow a leading zero but a point or an exponent.
  const whole = text[first] === '0' ? first + 1 : digitsEnd(text, first);
  if (typeof whole !== 'number') return whole;
  const fraction = text[whole] === '.' ? digitsEnd(text, whole + 1) : whole;
  if (typeof fraction !== 'number') return fraction;
  if (text[fraction] !== 'e' && text[fraction] !== 'E') return fraction;
  const sign = text[fraction + 1];
  return digitsEnd(text, sign === '-' || sign === '+' ? fraction + 2 : fraction + 1);
}

/** Past one digit or more. */
function digitsEnd(text: string, start: number): End {
  let at = start;
  for (;;) {
    const code = text.charCodeAt(at);
    if (!(code >= 0x30 && code <= 0x39)) break;
    at += 1;
  }
  return at > start ? at : faultAt(text, at);
}
