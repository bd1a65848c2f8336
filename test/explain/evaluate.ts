/**
 * Reckons a printed formula, as somebody with a pocket calculator would: what stands side by side is multiplied. Shares
 * nothing with the program: it reads the text, and knows the symbols only by their spelling.
 */
export function evaluate(text: string, symbols: ReadonlyMap<string, number> = new Map()): number {
  const javascript = withSigns(words(text, symbols));
  if (!/^[\d\s.+\-*/(),a-zA-Z]*$/.test(javascript)) throw new Error(`cannot be reckoned: ${text}`);
  return new Function(`const { max, min, sqrt, log2, abs } = Math; return (${javascript});`)() as number;
}

/** Numbers, symbols as their values, functions and signs. */
function words(text: string, symbols: ReadonlyMap<string, number>): readonly string[] {
  const spelled = [...symbols.keys()].sort((a, b) => b.length - a.length);
  const found: string[] = [];
  let rest = text;
  while (rest !== '') {
    const symbol = spelled.find((s) => rest.startsWith(s) && !/^[\w*]/.test(rest.slice(s.length)));
    const word =
      /^(?:max|min|sqrt|log2)(?=\()/.exec(rest)?.[0] ?? symbol ?? /^(?:\d+(?:\.\d+)?|[-−+×/(),|²³])/.exec(rest)?.[0];
    if (word === undefined) {
      if (!rest.startsWith(' ')) throw new Error(`"${rest}" is not understood in ${text}`);
      rest = rest.slice(1);
      continue;
    }
    found.push(symbol !== undefined && word === symbol ? `(${symbols.get(symbol)?.toFixed(20)})` : word);
    rest = rest.slice(word.length);
  }
  return found;
}

/** In the spelling of the language, with a sign between factors. */
function withSigns(found: readonly string[]): string {
  const spelling: Readonly<Record<string, string>> = { '−': '-', '×': '*', '²': '**2', '³': '**3' };
  let text = '';
  let valueBefore = false;
  let open = false;
  for (const word of found) {
    const closing = word === '|' && open;
    const begins = /^[\d(a-z]/.test(word) || (word === '|' && !closing);
    if (valueBefore && begins) text += '*';
    if (word === '|') {
      text += closing ? ')' : 'abs(';
      open = !open;
    } else text += spelling[word] ?? word;
    valueBefore = closing || /^[\d)²³]|\)$/.test(word);
  }
  return text;
}
