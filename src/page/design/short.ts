import type { FormGroup, FormNode } from '../../model/design-form.js';

/** In one line what a closed group holds. */
export function inShort(node: FormNode): string {
  if (node.kind === 'field') return node.value ?? '';
  if (!node.written) return 'left out';
  if (node.kind === 'list')
    return node.alone?.value ?? (node.entries.length === 0 ? 'none' : node.entries.map(nameOf).join(', '));
  if (node.word !== null) return node.word;
  // an entry's name is its heading already
  const told = node.path.endsWith(']') ? node.nodes.filter(({ key }) => key !== 'name') : node.nodes;
  return writtenFields(told).join(', ') || 'nothing yet';
}

function nameOf({ nodes }: FormGroup): string {
  const first = nodes.find(({ written }) => written);
  return first === undefined ? '' : inShort(first);
}

const writtenFields = (nodes: readonly FormNode[]): readonly string[] =>
  nodes
    .filter(({ written }) => written)
    .map((node) => (node.kind === 'field' ? `${node.label} ${node.value ?? ''}` : node.label));
