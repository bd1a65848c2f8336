/** A design file as a form: what the schema says of each key, beside what the file has written there. */
export interface DesignForm {
  readonly nodes: readonly FormNode[];
}

export type FormNode = FormField | FormGroup | FormList;

interface AnyNode {
  /** `holders[1].filmDepth`; an entry of a list ends in its number. */
  readonly path: string;
  /** The last step of it, as the file has it: filmDepth. */
  readonly key: string;
  /** The key in words: film depth. */
  readonly label: string;
  readonly description: string;
  readonly required: boolean;
  /** Whether the file has the key. */
  readonly written: boolean;
  /** As it could be written. */
  readonly example: string;
  /** What holds where it is not written, in words or as it would be written; null where nothing does. */
  readonly whenAbsent: string | null;
}

/** A value on one line. */
export interface FormField extends AnyNode {
  readonly kind: 'field';
  /**
   * What the file has there without its quotes; null where it has nothing. Several readings or a pair of lengths with commas
   * between; `none` where it has an empty list.
   */
  readonly value: string | null;
  /** The words that it may be; any text where empty. */
  readonly options: readonly string[];
  /** Such as mm or kg, as the example has it; empty where the key takes no unit. */
  readonly unit: string;
  /** Whether it takes what is less than nothing, as a fit does. */
  readonly mayBeNegative: boolean;
  /** Whether several values may stand there, between commas; `none` for none of them, where that may be. */
  readonly several: boolean;
}

/** Keys that belong together. */
export interface FormGroup extends AnyNode {
  readonly kind: 'group';
  readonly nodes: readonly FormNode[];
  /** Words that may stand there in place of the group, such as the name of a format; the one that does, if any. */
  readonly words: readonly string[];
  readonly word: string | null;
}

/** Entries of one kind, such as holders. */
export interface FormList extends AnyNode {
  readonly kind: 'list';
  readonly entries: readonly FormGroup[];
  /** A value that may stand there in place of the entries, such as an exponent in place of a table. */
  readonly alone: FormField | null;
  /** An entry that could be added, as it would be written; its name is none of those that are there. */
  readonly fresh: string;
  readonly most: number;
}

/** A change to the text of a design file that leaves every other byte as it was. */
export type KeyEdit =
  /** Writes a value as it was typed, with the groups that it needs; several values between commas where the key takes several. */
  | { readonly kind: 'write'; readonly path: string; readonly value: string }
  /** Takes a key out, so that its default holds; a group or a list whole, an entry out of its list. */
  | { readonly kind: 'remove'; readonly path: string }
  /** Puts an entry behind the others of a list, such as `{ name: film holder, filmDepth: 4.8 mm }`. */
  | { readonly kind: 'add'; readonly path: string; readonly entry: string }
  /** Takes away the comment behind a value that says that nobody has measured it. */
  | { readonly kind: 'measured'; readonly path: string };
