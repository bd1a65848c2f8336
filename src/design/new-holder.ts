import { holderNamesDiffer } from './consistency.js';
import type { Design } from './design.js';
import { type NameTrouble, nameTrouble, slugOf } from './names.js';

interface NewHolderTrouble extends NameTrouble {
  /** The holder of the design that is called so already. */
  readonly known?: string;
}

/** Why a holder that the design does not know cannot be called so: its index line and its folder would be another's. */
export function newHolderTrouble({ holders }: Design, name: string): NewHolderTrouble | null {
  const unfit = nameTrouble(name);
  if (unfit !== null) return unfit;
  const known = holders.find((holder) => slugOf(holder.name) === slugOf(name))?.name;
  if (known !== undefined)
    return { what: `The design has a holder "${known}" already.`, accepted: 'Give another name.', known };
  return holderNamesDiffer({ holders: [{ name }] })[0] ?? null;
}
