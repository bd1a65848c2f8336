const DECIMAL = /^\d+(?:\.\d+)?$/;
const PLAIN = /^[a-zA-Z0-9±](?:[a-zA-Z0-9 ./±%+-]|:(?=\S))*$/;
const WORDS_OF_YAML = /^(?:true|false|null|yes|no|on|off)$/i;

/** A text as YAML takes it for that text within `{ }`, or for the number that it is; empty where it is. */
export function scalarText(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '' || DECIMAL.test(trimmed)) return trimmed;
  const isPlain = PLAIN.test(trimmed) && !WORDS_OF_YAML.test(trimmed) && Number.isNaN(Number(trimmed));
  return isPlain ? trimmed : JSON.stringify(trimmed);
}

/** A value as YAML has it on one line: `{ diameter: 54 mm, at: 1:1 }`. */
export function flowText(value: unknown): string {
  if (typeof value === 'string') return value.trim() === '' ? '""' : scalarText(value);
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
    return entries.length === 0
      ? '{}'
      : `{ ${entries.map(([key, inner]) => `${key}: ${flowText(inner)}`).join(', ')} }`;
  }
  return String(value);
}
