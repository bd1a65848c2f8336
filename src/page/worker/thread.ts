/** The thread that a worker's code runs on: the part of it that ours need. */
export interface Thread<In, Out> {
  onmessage: ((event: { readonly data: In }) => void) | null;
  postMessage(message: Out, transfer?: readonly Transferable[]): void;
}

/** Inside a worker `self` is its thread; the types of the library know a window alone. */
export const thread = <In, Out>(): Thread<In, Out> => self as unknown as Thread<In, Out>;
