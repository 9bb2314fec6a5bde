// Bundles src/cli/main.ts into dist/putback.js and the chunks that it loads when needed, and the thread that reads
// pictures into dist/decode-worker.js.
// Splitting keeps `--help` free of React: only the entry is parsed until a command imports more.
import { chmodSync, mkdirSync, readdirSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { sourcesHash, writeSourcesStamp } from './sources-stamp.mjs'
import { root } from './workspace-root.mjs'

const outdir = join(root, 'dist')

/** Builds dist/. Files are put in place one by one, the entry last, so a reader never meets half a file. */
export async function build() {
  const { build: bundle, stop } = await import('esbuild')
  const hash = sourcesHash()
  const { outputFiles } = await bundle({
    absWorkingDir: root,
    entryPoints: { putback: 'src/cli/main.ts', 'decode-worker': 'src/photos/decode-worker.ts' },
    outdir: 'dist',
    chunkNames: '[name]-[hash]',
    bundle: true,
    external,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    charset: 'utf8',
    legalComments: 'none',
    define: { 'process.env.NODE_ENV': '"production"' },
    // CommonJS packages inside the bundle call require().
    banner: {
      js: "import { createRequire as createRequireHere } from 'node:module'; const require = createRequireHere(import.meta.url);",
    },
    plugins: [withoutDevtools],
    logLevel: 'warning',
    write: false,
  })
  await stop()

  mkdirSync(outdir, { recursive: true })
  const entryLast = outputFiles.toSorted((a, b) => Number(isEntry(a.path)) - Number(isEntry(b.path)))
  for (const { path, text } of entryLast) putInPlace(path, isEntry(path) ? withShebang(text) : text)
  removeOthers(outputFiles.map(({ path }) => basename(path)))
  writeSourcesStamp(hash)
}

// Installed beside the program: they are large, bring files of their own (wasm, fonts), and only printing and pictures
// load them.
const external = [
  '@resvg/resvg-wasm',
  'dejavu-fonts-ttf',
  'exifr',
  'fontkit',
  'pdfkit',
  'qrcode',
  'zxing-wasm',
]

// Ink reaches for this package only when DEV=true; it is not installed.
const withoutDevtools = {
  name: 'without-react-devtools',
  setup(bundle) {
    bundle.onResolve({ filter: /^react-devtools-core$/ }, ({ path }) => ({ path, namespace: 'empty' }))
    bundle.onLoad({ filter: /.*/, namespace: 'empty' }, () => ({ contents: 'export default undefined' }))
  },
}

function isEntry(path) {
  return basename(path) === 'putback.js'
}

function withShebang(text) {
  return text.startsWith('#!') ? text : `#!/usr/bin/env node\n${text}`
}

function putInPlace(path, text) {
  const partial = `${path}.${process.pid}.tmp`
  writeFileSync(partial, text)
  if (isEntry(path)) chmodSync(partial, 0o755)
  renameSync(partial, path)
}

function removeOthers(names) {
  for (const name of readdirSync(outdir)) {
    if (name.endsWith('.js') && !names.includes(name)) rmSync(join(outdir, name), { force: true })
  }
}

// realpath: the clone may lie behind a symbolic link.
if (fileURLToPath(import.meta.url) === realpathSync(process.argv[1])) await build()
