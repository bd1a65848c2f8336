/** The value of a JSON text, or the place from which on it is none. */
export type JsonText = { readonly value: unknown } | { readonly what: string };

/** Reads JSON that a person may have written; where it is none it says in which line and column. */
export function readJson(written: string): JsonText {
  const text = written.replace(/^\ufeff/, '');
  try {
    return { value: JSON.parse(text) };
  } catch (error) {
    // engines say in words of their own where they stopped, and some do not
    if (!(error instanceof SyntaxError)) throw error;
    const lines = text.slice(0, strayAt(text)).split('\n');
    return { what: `It is not JSON from line ${lines.length}, column ${(lines.at(-1)?.length ?? 0) + 1} on.` };
  }
}

/** What may stand next: a value, a key, or what follows one. A bracket just opened may be closed again. */
type Wanted = 'value' | 'first value' | 'key' | 'first key' | 'colon' | 'end of value';

const BLANK = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\\p{Cc}]|[\u007f-\u009f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const LITERAL = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** Where a text stops being JSON: the first token (RFC 8259) that may not stand there, or the end where more was to come. */
function strayAt(text: string): number {
  const open: ('{' | '[')[] = [];
  let wanted: Wanted = 'value';
  let at = 0;
  const pass = (token: RegExp): boolean => {
    token.lastIndex = at;
    const found = token.test(text);
    if (found) at = token.lastIndex;
    return found;
  };
  for (;;) {
    pass(BLANK);
    const sign = text.charAt(at);
    if (wanted === 'end of value' && open.length === 0) return at;
    const inside = open.at(-1);
    const closes = sign === '}' ? 'first key' : sign === ']' ? 'first value' : null;
    if (closes !== null && (wanted === 'end of value' || wanted === closes)) {
      if (inside !== (sign === '}' ? '{' : '[')) return at;
      open.pop();
      wanted = 'end of value';
      at++;
    } else if (wanted === 'end of value') {
      if (sign !== ',') return at;
      wanted = inside === '{' ? 'key' : 'value';
      at++;
    } else if (wanted === 'colon') {
      if (sign !== ':') return at;
      wanted = 'value';
      at++;
    } else if (wanted === 'key' || wanted === 'first key') {
      if (!pass(STRING)) return at;
      wanted = 'colon';
    } else if (sign === '{' || sign === '[') {
      open.push(sign);
      wanted = sign === '{' ? 'first key' : 'first value';
      at++;
    } else {
      if (!pass(STRING) && !pass(LITERAL)) return at;
      wanted = 'end of value';
    }
  }
}
