import type { FlagLabel, LabelContent } from '../label-content.ts'
import { plainText } from '../plain-text.ts'
import { sketchBlank } from './blank.ts'
import type { Box } from './column.ts'
import { sketchContainer } from './container.ts'
import { sketchFlag } from './flag.ts'
import type { About, LabelSize, Laid, Sketch } from './laid.ts'
import { sketchMachineTag } from './machine-tag.ts'
import { type SymbolSpots, symbolSpots } from './symbol-spots.ts'
import { inset } from './type-sizes.ts'

/**
 * Lays a label out on its size in millimetres. Texts are cleaned of what is not seen, shrunk down to what can be read,
 * then shortened; they never overlap. Refused are characters that the fonts lack, all of them named, and labels
 * too small for a symbol or a text that can be read.
 */
export function layOut(content: LabelContent, size: LabelSize, about: About): Laid {
  const clean = cleaned(content)
  const characters = about.typeface.missing(textsOf(clean).join(' '))
  if (characters.length > 0) {
    return { ok: false, refusal: { code: 'no-glyph', label: content.name, characters } }
  }
  if (clean.kind === 'flag') {
    const flag = sketchFlag(clean, size, about)
    return 'code' in flag ? { ok: false, refusal: flag } : laid(flag, size)
  }
  const { width, height } = size
  const area: Box = { x: inset, y: inset, width: width - 2 * inset, height: height - 2 * inset }
  const spots = symbolSpots(area, about.dpi)
  if ('code' in spots) return { ok: false, refusal: { ...spots, label: content.name } }
  const sketch = bestOf(spots, (each) => sketchOn(clean, area, each, about))
  if (sketch) return laid(sketch, size)
  return { ok: false, refusal: { code: 'label-too-small', label: content.name, width, height } }
}

function sketchOn(
  content: Exclude<LabelContent, FlagLabel>,
  area: Box,
  spots: SymbolSpots,
  about: About,
): Sketch | null {
  switch (content.kind) {
    case 'container':
      return sketchContainer(content, area, spots, about)
    case 'blank':
      return sketchBlank(content, area, spots, about)
    case 'machine':
      return sketchMachineTag(content, area, spots, about)
  }
}

/** The safest way in which nothing is cut but the name of the job; when there is none, the one that cuts least. */
function bestOf(spots: readonly SymbolSpots[], sketch: (spots: SymbolSpots) => Sketch | null): Sketch | null {
  // The number of the job stands in the code.
  const cutsOf = ({ shortened }: Sketch) => shortened.filter((part) => part !== 'job').length
  let best: Sketch | null = null
  for (const each of spots) {
    const drawn = sketch(each)
    if (drawn && cutsOf(drawn) === 0) return drawn
    if (drawn && (best === null || cutsOf(drawn) < cutsOf(best))) best = drawn
  }
  return best
}

function laid({ shapes, shortened }: Sketch, { width, height }: LabelSize): Laid {
  return { ok: true, drawing: { width, height, shapes }, shortened }
}

function cleaned(content: LabelContent): LabelContent {
  const fields = Object.entries(content).map(([key, value]) => [key, cleanedValue(value)])
  return Object.fromEntries(fields) as unknown as LabelContent
}

function cleanedValue(value: string | string[] | null): string | string[] | null {
  if (value === null) return null
  return typeof value === 'string' ? plainText(value) : value.map(plainText).filter((text) => text !== '')
}

// What names the label in errors and its kind are not printed.
function textsOf({ kind: _kind, name: _name, ...printed }: LabelContent): string[] {
  return Object.values(printed).flatMap((value) => value ?? [])
}
