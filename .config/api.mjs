/**
 * Keeps what the packages export as a text that a change has to change too: packages/<name>/etc/<subpath>.api.md.
 * Fails when a report differs from what is built; `--update` writes it. Wants `npm run build` before.
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CompilerState, Extractor, ExtractorConfig } from '@microsoft/api-extractor';
import { subpathsOf } from './subpaths.mjs';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const update = process.argv.includes('--update');
const differing = [];

for (const name of ['core', 'transient', 'workshop', 'airspring']) {
  const folder = join(top, 'packages', name);
  const reports = join(folder, 'etc');
  mkdirSync(reports, { recursive: true });
  const manifest = join(folder, 'package.json');
  const subpaths = subpathsOf(folder);

  const typesOf = (subpath) => join('dist', subpath, 'index.d.ts');
  const reportOf = (subpath) => `${subpath === '.' ? name : subpath}.api.md`;
  const silent = { default: { logLevel: 'none' } };
  const configs = subpaths.map((subpath) => {
    return ExtractorConfig.prepare({
      configObjectFullPath: undefined,
      packageJsonFullPath: manifest,
      configObject: {
        projectFolder: folder,
        mainEntryPointFilePath: join(folder, typesOf(subpath)),
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
            files: subpaths.map(typesOf),
          },
        },
        apiReport: {
          enabled: true,
          reportFileName: reportOf(subpath),
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
  });
  // One program for all subpaths: most of the time goes into reading their types.
  const additionalEntryPoints = configs.slice(1).map(({ mainEntryPointFilePath }) => mainEntryPointFilePath);
  const compilerState = CompilerState.create(configs[0], { additionalEntryPoints });
  for (const [i, config] of configs.entries()) {
    const { apiReportChanged } = Extractor.invoke(config, {
      localBuild: update,
      compilerState,
      messageCallback: (m) => (m.handled = true),
    });
    if (apiReportChanged) differing.push(`packages/${name}/etc/${reportOf(subpaths[i])}`);
  }

  const known = new Set(subpaths.map(reportOf));
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
