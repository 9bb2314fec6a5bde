// pdf.js for Node 20 puts functions of its own in the place of JSON's, of push and of toString, for all that runs in the
// same worker afterwards: slower ones, and not those that the program has. What it found here is put back, what it added
// stays, for it needs that.
const holders: object[] = [JSON, Array.prototype, Function.prototype]
const builtIn = holders.map((holder) => [holder, Object.getOwnPropertyDescriptors(holder)] as const)

/** Opens a PDF with pdf.js. */
export const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs')
// The half of it that reads files would be loaded with the first one.
const reading: string = 'pdfjs-dist/legacy/build/pdf.worker.mjs'
await import(reading)

for (const [holder, before] of builtIn) Object.defineProperties(holder, before)
