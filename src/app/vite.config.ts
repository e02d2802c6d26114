import { parse } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type IndexHtmlTransformContext, type Plugin } from 'vite';
import { jsonSchema } from '../files/json-schema.ts';
import { shellWords } from '../words/shell.ts';
import { catalogue } from './catalogue.ts';
import { dataFiles } from './data-files.ts';
import { manifest } from './manifest.ts';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const core =
  'cost-of-wrong costs-for fleet gamma-wear history hours-left inverse-gaussian job-costs job-kinds job-plan jobs life mend money outlook passage plan plan-branch plan-input plan-policies plan-relaxed plan-search plan-tables plan-whole part-events days engine-hours forecast-band replacement root running-hours special trend wear-filter weibull'.split(
    ' ',
  );
const screens =
  'ahead-lead hours-ladder hours-basis plan-view mend-or-renew wear-history costs costs-edit cost-book'.split(
    ' ',
  );

const aheadModule = new RegExp(
  `/src/(?:words/(?:en/(?:ahead|costs|history)|ahead-text)|reference/cost-classes|core/(?:${core.join('|')})|app/(?:ahead-screens|data/(?:costs-form|fleet|machine-history|outlook|outlook-shelf|wear-chart)|parts/(?:hours-bar|wear-plot)|screens/(?:${screens.join('|')})))\\.tsx?$`,
);

/** What the bundler knows of modules; its method needs its object. */
interface Bundler {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/** The modules that come with one of these without being asked for. */
function comesWith(starts: readonly string[], bundler: Bundler): ReadonlySet<string> {
  const all = new Set<string>();
  const todo = starts.map(at);
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    if (all.has(id)) continue;
    all.add(id);
    todo.push(...(bundler.getModuleInfo(id)?.importedIds ?? []));
  }
  return all;
}

interface Shared {
  /** Evaluated before the sentences are there. */
  readonly main: ReadonlySet<string>;
  readonly first: ReadonlySet<string>;
  readonly later: ReadonlySet<string>;
}
let shared: Shared | undefined;

/**
 * One file for what the first screen shares with others, and one for all that the screens after it share: cut up by
 * who else uses them, they are 2 kB larger.
 */
function sharedName(id: string, bundler: Bundler): string | null {
  shared ??= {
    main: comesWith(['main.ts'], bundler),
    first: comesWith(['start.tsx'], bundler),
    later: comesWith(['later-screens.ts'], bundler),
  };
  if (shared.main.has(id) || !shared.later.has(id)) return null;
  return shared.first.has(id) ? 'first' : 'later';
}

/** Files of their own, loaded when first asked for; left alone, the bundler puts them where the walk is. */
const groups = [
  { name: 'ahead', test: aheadModule },
  {
    name: 'options',
    test: /\/src\/(?:app\/options\/|report\/build-options|core\/(?:option-|options|hauling|ground-pressure)|reference\/(?:option|life|hauling|ground-pressure|sources)|words\/(?:en\/)?(?:option|hauling|ground\.))/,
  },
  {
    name: 'photos',
    test: /\/src\/(?:app\/photos\/|core\/photo-(?:order|measure|plane|scales)|words\/en\/photos\.ts)/,
  },
  {
    name: 'sealing',
    test: /\/src\/(?:app\/sealing\/|seal\/|files\/(?:gather|seal-view)\.ts|core\/(?:seal-payload|differences)\.ts|words\/en\/sealing\.ts)/,
  },
  {
    name: 'charging',
    test: /\/src\/(?:app\/charging\/|core\/rental(?!-damage)|report\/(?:build-charge|charge-days)|words\/(?:en\/charge\.ts|charge-text))/,
  },
  {
    name: 'order-page',
    test: /\/src\/(?:app\/ordering\/order-paper|report\/build-order|words\/en\/order-page)/,
  },
  { name: 'order-table', test: /\/src\/(?:app\/ordering\/give-order|files\/order-csv)/ },
  {
    name: 'ordering',
    test: /\/src\/(?:app\/ordering\/|core\/(?:part-kinds|part-facts|parts-to-order|order-needs)|words\/(?:en\/ordering|order-text))/,
  },
  {
    name: 'appraisal',
    test: /\/src\/(?:app\/appraisal\/|core\/appraisal|words\/(?:en\/)?appraisal|report\/(?:build-)?appraisal|files\/appraisal)/,
  },
  { name: 'qr', test: /\/src\/report\/qr-path|\/node_modules\/qr\// },
  { name: 'reporting', test: /\/src\/(?:app\/reporting\/|report\/(?!pdf)|words\/en\/report\.ts)/ },
  { name: 'pdf', test: /\/src\/report\/pdf|\/node_modules\/@cantoo\// },
  {
    name: 'handover',
    test: /\/src\/(?:app\/handover\/|words\/en\/(?:handover|csv|calendar)\.ts|core\/recheck|files\/(?:zip-|bundle-|read-bundle|write-bundle|jpeg|exif|bytes|csv|calendar|ical|iso-moment|due-day))/,
  },
  {
    name: 'rental',
    test: /\/src\/(?:app\/rental\/|core\/(?:rental-damage|hand-out|hire|shots)|words\/(?:rental|en\/(?:rental|contract)))/,
  },
  { name: sharedName },
];

/** The start of the app is fetched beside the sentences that it waits for. */
function withPreload(html: string, bundle: IndexHtmlTransformContext['bundle']): string {
  const start = Object.values(bundle ?? {}).find((each) => each.type === 'chunk' && each.name === 'start');
  const link = start === undefined ? '' : `<link rel="modulepreload" href="/${start.fileName}" />`;
  return html.replace('</head>', `  ${link}\n  </head>`);
}

/** Writes the manifest and the sentences of index.html from the words, and the schema of our files. */
const installPage: Plugin = {
  name: 'install-page',
  generateBundle() {
    const schema = JSON.stringify(jsonSchema());
    this.emitFile({ type: 'asset', fileName: 'schema/walk-file.json', source: schema });
    this.emitFile({ type: 'asset', fileName: 'manifest.webmanifest', source: JSON.stringify(manifest) });
  },
  transformIndexHtml: (html, { bundle }) =>
    withPreload(html, bundle).replace(/%(\w+)%/g, (_match, key: string) => {
      const text: unknown = Object.entries(shellWords).find(([name]) => name === key)?.[1];
      if (typeof text !== 'string') throw new Error(`index.html asks for the unknown word ${key}`);
      return text;
    }),
};

export default defineConfig({
  root: at('.'),
  publicDir: at('../../public'),
  plugins: [installPage, dataFiles, catalogue()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  // A class goes by its sheet and its own name: no hash says more, and none packs as well.
  css: {
    modules: { generateScopedName: (name, path) => `${parse(path).name.replace('.module', '')}-${name}` },
  },
  worker: { format: 'es' },
  define: { __BUILD_ID__: JSON.stringify('development') },
  build: {
    outDir: at('../../dist'),
    emptyOutDir: true,
    target: 'es2022',
    manifest: true,
    // Two files are asked for later, both without others: the helper that preloads such would be larger than its use.
    modulePreload: false,
    cssCodeSplit: false,
    // 3 % smaller after brotli than the default minifier, measured on the whole app (101.5 to 98.5 kB).
    minify: 'terser',
    terserOptions: {
      ecma: 2022,
      module: true,
      compress: { passes: 3, inline: 1, unsafe_arrows: true, keep_fargs: false },
      format: { comments: false },
    },
    license: { fileName: 'licenses.txt' },
    // How long a plugin takes depends on the machine, and a warning ends the build.
    rolldownOptions: {
      checks: { pluginTimings: false },
      // The library that writes PDFs does nothing when it is loaded, but does not say so: this halves it.
      treeshake: {
        moduleSideEffects: [
          {
            test: /node_modules\/(?:@cantoo|culori|node-html-better-parser|html-entities)\//,
            sideEffects: false,
          },
        ],
      },
      output: { codeSplitting: { includeDependenciesRecursively: false, groups } },
    },
    // A data: address would need its own permission in the Content-Security-Policy.
    assetsInlineLimit: 0,
  },
});
