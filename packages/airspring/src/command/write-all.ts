/** Writes a text to its last byte. Resolves to `undefined`, or to the reason why it could not be written. */
export const writeAll = (stream: NodeJS.WritableStream, text: string): Promise<NodeJS.ErrnoException | undefined> =>
  new Promise((resolve) => {
    if (text === '') return resolve(undefined);
    stream.on('error', resolve);
    try {
      stream.write(text, (error) => resolve(error ?? undefined));
    } catch (error) {
      resolve(error as NodeJS.ErrnoException);
    }
  });
