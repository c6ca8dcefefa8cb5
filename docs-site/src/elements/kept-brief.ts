/** Where a reader's brief is kept: in the store of the browser while it is written, and in an address to hand on. */
/** Each page keeps a brief of its own. */
const key = (page: string): string => `airspring-brief ${page}`;
const MARK = '#brief=';
/** A brief is some thousand characters long. */
const LONGEST = 200_000;

export type Opened = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly because: string };

/** A browser may refuse to keep anything. */
const tried = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

export const keptText = (page = location.pathname): string | undefined =>
  tried(() => localStorage.getItem(key(page))) ?? undefined;
export const keep = (text: string | undefined, page = location.pathname): void =>
  void tried(() => (text === undefined ? localStorage.removeItem(key(page)) : localStorage.setItem(key(page), text)));

const through = (bytes: Uint8Array, change: GenericTransformStream): Promise<ArrayBuffer> =>
  new Response(
    new Blob([bytes as BlobPart]).stream().pipeThrough(change as ReadableWritablePair<Uint8Array, Uint8Array>),
  ).arrayBuffer();

/** The part of an address that holds a brief. */
export async function packed(text: string): Promise<string> {
  const bytes = new Uint8Array(await through(new TextEncoder().encode(text), new CompressionStream('deflate')));
  const base64 = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  return MARK + base64.replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

/** The brief of an address; nothing where it holds none. */
export async function unpacked(hash: string): Promise<Opened | undefined> {
  if (!hash.startsWith(MARK)) return undefined;
  try {
    const base64 = hash.slice(MARK.length).replace(/-/g, '+').replace(/_/g, '/');
    const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
    return { ok: true, text: new TextDecoder().decode(await through(bytes, new DecompressionStream('deflate'))) };
  } catch {
    return {
      ok: false,
      because: 'The brief in this address is cut off or damaged: ask for the link again, or for the file.',
    };
  }
}

/** The text of a file that was opened or dropped. */
export async function opened(file: File): Promise<Opened> {
  const no = (because: string): Opened => ({ ok: false, because: `${file.name} ${because}` });
  if (/^(image|audio|video)\//.test(file.type)) return no('is not a brief: it holds a picture or a recording.');
  if (file.size > LONGEST) return no('is too long for a brief.');
  const text = await file.text();
  return /[\0\ufffd]/.test(text) ? no('is not a brief: it is not text.') : { ok: true, text };
}
