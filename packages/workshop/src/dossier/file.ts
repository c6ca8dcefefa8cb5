/** A file of the folder to build from: its path inside it, with `/` between folders. */
export interface BuildFile {
  readonly path: string;
  readonly contents: string | Uint8Array;
}
