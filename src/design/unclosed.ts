/**
 * Where the last quote or bracket stands that is never closed; null where all are. The library names the place where it gave
 * up, which may be the end of the file. A comment is skipped; a quote inside a word, as in `7/8"`, is no quote.
 */
export function unclosedAt(text: string): number | null {
  const open: number[] = [];
  let at = 0;
  while (at < text.length) {
    const sign = text.charAt(at);
    const before = at === 0 ? '\n' : text.charAt(at - 1);
    if (sign === '#' && /\s/.test(before)) {
      at = endOr(text.indexOf('\n', at), text);
    } else if ((sign === '"' || sign === "'") && /[\s,[{]/.test(before)) {
      const end = closingQuote(text, at);
      if (end === null) return at;
      at = end;
    } else if (sign === '[' || sign === '{') open.push(at);
    else if (sign === ']' || sign === '}') open.pop();
    at += 1;
  }
  return open.at(-1) ?? null;
}

const endOr = (found: number, text: string): number => (found < 0 ? text.length : found);

function closingQuote(text: string, start: number): number | null {
  const quote = text.charAt(start);
  for (let at = start + 1; at < text.length; at++) {
    if (quote === '"' && text.charAt(at) === '\\') at += 1;
    else if (text.charAt(at) === quote) {
      if (quote === '"' || text.charAt(at + 1) !== quote) return at;
      at += 1; // '' inside single quotes is one quote
    }
  }
  return null;
}
