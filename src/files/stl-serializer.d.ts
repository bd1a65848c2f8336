/** The package brings no types. A solid is its polygons and a matrix; the file comes in header, count and triangles. */
declare module '@jscad/stl-serializer/CSGToStlb.js' {
  export function serializeBinary(
    solids: readonly {
      readonly polygons: readonly { readonly vertices: readonly (readonly number[])[] }[];
      readonly transforms: readonly number[];
    }[],
    options: object,
  ): readonly ArrayBuffer[];
}
