// Measures putback against peers in the same run. Ratios travel between machines; milliseconds are a hint.
// Usage: npm run bench [-- ROW ...]; without a name, every row.
import { mkdirSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'esbuild'
import { build as buildProgram } from '../scripts/build.mjs'

const here = dirname(fileURLToPath(import.meta.url))
const cache = join(here, '.cache')
mkdirSync(cache, { recursive: true })

const names = readdirSync(join(here, 'rows')).map((file) => file.replace(/\.ts$/, ''))
const asked = process.argv.slice(2)
const unknown = asked.filter((name) => !names.includes(name))
if (unknown.length > 0) {
  console.error(`no bench row '${unknown[0]}'; there are: ${names.join(', ')}`)
  process.exit(2)
}

await buildProgram()
await buildPeer()
await build({
  entryPoints: (asked.length > 0 ? asked : names).map((name) => join(here, 'rows', `${name}.ts`)),
  outdir: cache,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  logLevel: 'warning',
})

console.log(`node ${process.version}, ${process.platform} ${process.arch}`)
for (const name of asked.length > 0 ? asked : names) {
  console.log(`\n${name}`)
  const { run } = await import(pathToFileURL(join(cache, `${name}.mjs`)).href)
  await run({ print: (line) => console.log(`  ${line}`) })
}

/** The least that Ink can draw, bundled as the product is: the peer of the first frame. */
async function buildPeer() {
  await build({
    absWorkingDir: here,
    entryPoints: ['peers/bare-ink.tsx'],
    outfile: '.cache/bare-ink.mjs',
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"' },
    alias: { 'react-devtools-core': './peers/no-devtools.mjs' },
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
    logLevel: 'warning',
  })
}
