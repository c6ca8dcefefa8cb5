/**
 * Keeps what the packages export as a text that a change has to change too: packages/<name>/etc/<subpath>.api.md.
 * Fails when a report differs from what is built; `--update` writes it. Wants `npm run build` before.
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Extractor, ExtractorConfig } from '@microsoft/api-extractor';
import { subpathsOf } from './subpaths.mjs';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const update = process.argv.includes('--update');
const differing = [];

for (const name of ['core', 'airspring']) {
  const folder = join(top, 'packages', name);
  const reports = join(folder, 'etc');
  mkdirSync(reports, { recursive: true });
  const manifest = join(folder, 'package.json');
  const subpaths = subpathsOf(folder);

  for (const subpath of subpaths) {
    const types = join('dist', subpath, 'index.d.ts');
    const report = `${subpath === '.' ? name : subpath}.api.md`;
    const silent = { default: { logLevel: 'none' } };
    const config = ExtractorConfig.prepare({
      configObjectFullPath: undefined,
      packageJsonFullPath: manifest,
      configObject: {
        projectFolder: folder,
        mainEntryPointFilePath: join(folder, types),
        newlineKind: 'lf',
        compiler: {
          overrideTsconfig: {
            compilerOptions: {
              target: 'es2023',
              lib: ['es2023', 'dom'],
              module: 'esnext',
              moduleResolution: 'bundler',
              strict: true,
            },
            files: [types],
          },
        },
        apiReport: {
          enabled: true,
          reportFileName: report,
          reportFolder: reports,
          reportTempFolder: join(top, '.cache', 'api', name),
        },
        docModel: { enabled: false },
        dtsRollup: { enabled: false },
        tsdocMetadata: { enabled: false },
        // TeX in a docstring is no fault, and a type of another subpath stands in the report of that subpath.
        messages: {
          compilerMessageReporting: silent,
          extractorMessageReporting: silent,
          tsdocMessageReporting: silent,
        },
      },
    });
    const { apiReportChanged } = Extractor.invoke(config, {
      localBuild: update,
      messageCallback: (m) => (m.handled = true),
    });
    if (apiReportChanged) differing.push(`packages/${name}/etc/${report}`);
  }

  const known = new Set(subpaths.map((subpath) => `${subpath === '.' ? name : subpath}.api.md`));
  for (const left of readdirSync(reports).filter((file) => !known.has(file))) {
    differing.push(`packages/${name}/etc/${left}`);
    if (update) rmSync(join(reports, left));
  }
}
for (const report of differing) console.log(`${update ? 'updated' : 'differs'}: ${report}`);
if (!update && differing.length > 0) {
  console.log('What the packages export has changed. `npm run api` writes the reports; commit them with the change.');
  process.exitCode = 1;
}
