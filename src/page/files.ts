/** Files between the user's disk and the page: they are picked, and they are saved, as everywhere in a browser. */

/** A file of text that the user picked. */
export interface PickedFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Lets the user pick files; none where he thinks better of it.
 *
 * @param accept endings, such as .yaml,.yml
 */
export const pickFiles = async (accept: string, several = false): Promise<readonly PickedFile[]> =>
  readFiles(await pick(accept, several));

/** The same, unread. */
export function pick(accept: string, several: boolean): Promise<readonly File[]> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  input.multiple = several;
  return new Promise((resolve) => {
    input.onchange = () => {
      resolve([...(input.files ?? [])]);
    };
    input.oncancel = () => resolve([]);
    input.click();
  });
}

/** Files of text that were picked or dropped. A mark at the head stays, so that what is saved again has it too. */
export const readFiles = (files: readonly File[]): Promise<readonly PickedFile[]> =>
  Promise.all(
    files.map(async (file) => ({
      name: file.name,
      text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(await file.arrayBuffer()),
    })),
  );

/** Long enough for a browser to have taken the file. */
const TAKEN = 10000;

/** Saves a file where the browser saves what comes from a page. */
export function saveFile(name: string, content: string | Uint8Array<ArrayBuffer> | Blob, kind: string): void {
  const url = URL.createObjectURL(new Blob([content], { type: kind }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), TAKEN);
}
