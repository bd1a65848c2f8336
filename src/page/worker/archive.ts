import { loadArchive, manifestOf, type OutputFile } from '../../index.js';

/** A folder as the command line would write it, and all of it in one archive under its name. */
export async function archiveOf(
  slug: string,
  files: readonly OutputFile[],
): Promise<{ readonly folder: readonly OutputFile[]; readonly archive: OutputFile }> {
  const { zip, sha256 } = await loadArchive();
  const folder = [...files, manifestOf(files, sha256)];
  const bytes = zip(folder.map((file) => ({ ...file, path: `${slug}/${file.path}` })));
  return { folder, archive: { path: `${slug}.zip`, bytes } };
}
