import type { FormNode } from '../../model/design-form.js';

/**
 * The nodes in which all words occur, with the groups that lead to them; a group that has them itself comes whole. Those
 * that are called so come before those that are told of with them.
 */
export function found(nodes: readonly FormNode[], sought: string): readonly FormNode[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  return words.length === 0 ? nodes : allIn(nodes, words, '');
}

const allIn = (nodes: readonly FormNode[], words: readonly string[], of: string): readonly FormNode[] => {
  const kept = nodes.flatMap((node) => foundIn(node, words, of));
  const called = kept.filter((node) => isCalled(node, words, of));
  return [...called, ...kept.filter((node) => !called.includes(node))];
};

const namesOf = ({ path, label }: FormNode, of: string): string => `${of} ${path} ${label}`.toLowerCase();

/** Whether its own names have the words, or those of something in it. */
function isCalled(node: FormNode, words: readonly string[], of: string): boolean {
  const names = namesOf(node, of);
  if (words.every((word) => names.includes(word))) return true;
  if (node.kind === 'field') return false;
  return (node.kind === 'list' ? node.entries : node.nodes).some((one) => isCalled(one, words, names));
}

function foundIn(node: FormNode, words: readonly string[], of: string): readonly FormNode[] {
  const names = namesOf(node, of);
  const options = node.kind === 'field' ? node.options.join(' ') : '';
  const told = `${names} ${node.description} ${options}`.toLowerCase();
  if (words.every((word) => (node.kind === 'group' ? names : told).includes(word))) return [node];
  if (node.kind === 'field') return [];
  if (node.kind === 'list') return node.entries.some((one) => foundIn(one, words, names).length > 0) ? [node] : [];
  const inner = allIn(node.nodes, words, names);
  return inner.length === 0 ? [] : [{ ...node, nodes: inner }];
}
