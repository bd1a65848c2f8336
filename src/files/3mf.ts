import { MESH_DECIMALS, type Mesh } from '../geometry/mesh.js';
import { plainNumber } from '../units/print.js';
import { zip } from './zip.js';

const XML = '<?xml version="1.0" encoding="UTF-8"?>\n';

/** Parts of a package by their endings; ECMA-376 part 2 (Open Packaging Conventions). */
const CONTENT_TYPES = `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
 <Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
 <Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
`;

/** Where the model is; 3MF Core Specification 1.4.0, section 2. */
const RELATIONSHIPS = `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
 <Relationship Id="rel0" Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
`;

/** A printed part as 3MF: one object, its corners indexed, standing in the octant that the format asks for. */
export function threeMf({ name, mesh }: { readonly name: string; readonly mesh: Mesh }): Uint8Array {
  const text = new TextEncoder();
  return zip([
    { path: '[Content_Types].xml', bytes: text.encode(CONTENT_TYPES) },
    { path: '_rels/.rels', bytes: text.encode(RELATIONSHIPS) },
    { path: '3D/3dmodel.model', bytes: text.encode(model(name, mesh)) },
  ]);
}

function model(name: string, { positions, triangles }: Mesh): string {
  const title = escaped(name);
  const points = threes(positions);
  const vertices = points.map(([x, y, z]) => `<vertex x="${mm(x)}" y="${mm(y)}" z="${mm(z)}"/>`);
  const faces = threes(triangles).map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`);
  const least = [0, 1, 2].map((axis) => points.reduce((low, point) => Math.min(low, point[axis] as number), 0));
  const shift = least.map((low) => mm(-low)).join(' ');
  return `${XML}<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
 <metadata name="Title">${title}</metadata>
 <resources>
  <object id="1" type="model" name="${title}">
   <mesh>
    <vertices>
     ${vertices.join('\n     ')}
    </vertices>
    <triangles>
     ${faces.join('\n     ')}
    </triangles>
   </mesh>
  </object>
 </resources>
 <build>
  <item objectid="1" transform="1 0 0 0 1 0 0 0 1 ${shift}"/>
 </build>
</model>
`;
}

const mm = (value: number): string => plainNumber(value, MESH_DECIMALS);

const threes = (list: readonly number[]) =>
  Array.from({ length: list.length / 3 }, (_, i) => list.slice(3 * i, 3 * i + 3) as [number, number, number]);

const escaped = (text: string) =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
