/** The letters of a card, which lie beside the page; fetched when they are first asked for. */
const drawer: { letters: Promise<Letters> | null } = { letters: null };

interface Letters {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export async function lettersKept(): Promise<Letters> {
  drawer.letters ??= fetchLetters();
  try {
    return await drawer.letters;
  } catch (error) {
    // a network that failed once is tried again when they are next asked for
    drawer.letters = null;
    throw error;
  }
}

async function fetchLetters(): Promise<Letters> {
  const [regular, bold] = await Promise.all(['DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'].map(fetchFace));
  if (regular === undefined || bold === undefined) throw new Error('two faces were asked for');
  return { regular, bold };
}

async function fetchFace(face: string): Promise<Uint8Array> {
  const answer = await fetch(new URL(`${face}.ttf`, import.meta.url));
  if (!answer.ok) throw new Error(`the letters ${face} are not there: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
