/** What is used of a library without types. */
declare module 'subset-font' {
  export default function subsetFont(
    font: Buffer,
    characters: string,
    options: { readonly targetFormat: 'woff2' },
  ): Promise<Buffer>;
}
