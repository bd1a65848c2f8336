/** How the design is shown beside the camera. */
export interface DesignView {
  readonly as: 'form' | 'text';
  /** Groups that were opened or closed by hand, by their path. */
  readonly opened: Readonly<Record<string, boolean>>;
  /** What is looked for among the keys; empty where all are shown. */
  readonly sought: string;
  /** The text as it is being typed; null where all of it is written. */
  readonly typed: string | null;
  /** What the dialog for a new design shows. */
  readonly fresh: {
    readonly formats: readonly { readonly name: string; readonly title: string }[];
    /** What is wrong with an answer, by its key; `all` where it is their being together. */
    readonly wrong: Readonly<Record<string, string>>;
  };
}

export const firstDesignView: DesignView = {
  as: 'form',
  opened: {},
  sought: '',
  typed: null,
  fresh: { formats: [], wrong: {} },
};
