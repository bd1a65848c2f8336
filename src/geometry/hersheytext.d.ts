declare module 'hersheytext' {
  interface Glyph {
    readonly width: number;
    /** Path data of M and L only, 1000 units to the em, y up. */
    readonly d: string;
  }
  const hershey: { getFontData(name: string): { readonly chars: Readonly<Record<string, Glyph>> } };
  export default hershey;
}
