/** What is published knows nothing of the condition that leads to our TypeScript: the tarball holds none. */
function withoutSource(manifest) {
  for (const target of Object.values(manifest.exports ?? {})) delete target['@airspring/source'];
  return manifest;
}

module.exports = { hooks: { beforePacking: withoutSource } };
