import type { LayoutRefusal } from '../label/layout/laid.ts'
import type { SheetRefusal } from '../label/sheet.ts'
import type { StockFault } from '../label/stock.ts'
import type { HowPrinted, PrintForm, PrintTarget } from '../lines/errand.ts'
import { say } from './cures.ts'
import { counted } from './grammar.ts'
import { characterName, millimetres } from './measures.ts'
import { type Told, told } from './told.ts'

/** Why something was not printed. */
export type PrintTrouble =
  | { code: 'no-such-stock'; stock: string; known: string[] }
  | { code: 'not-on-a-roll'; form: PrintForm }
  | { code: 'stock-is-no-roll'; stock: string; form: PrintForm }
  | { code: 'no-copies' }
  /** It changes nothing on whole pages. */
  | { code: 'only-for-labels'; what: 'from' | 'shift' }
  /** Dots across and down. */
  | { code: 'too-many-dots'; width: number; height: number; dpi: number }
  | { code: 'no-standard-output' }
  /** A package that came with the program. */
  | { code: 'part-missing'; part: string }
  | { code: 'one-label-only'; count: number; form: PrintForm }
  | { code: 'nothing-to-print'; what: 'container' | 'unused label' }
  | { code: 'label-still-unused'; label: number }
  | { code: 'not-unused'; from: number; to: number }
  | { code: 'no-connection'; name: string }
  | { code: 'at-home'; name: string }
  | { code: 'not-usual'; what: 'copies' | 'from' | 'file' }
  /** It was drawn, and did not arrive. `dealt`: the numbers of unused labels that are on no paper now. */
  | {
      code: 'not-sent'
      why: string
      where: string
      partly: boolean
      kind: 'file' | 'device' | 'tcp' | 'stdout'
      dealt: { from: number; to: number } | null
    }
  /** The record would not take what goes with it. */
  | { code: 'command-refused'; refused: string; told: Told }
  | LayoutRefusal
  /** More than one label of a run. */
  | { code: 'labels-not-drawn'; refusals: LayoutRefusal[] }
  | SheetRefusal

/** What went wrong with printing, and what to do. */
export function printTroubleTold(trouble: PrintTrouble): Told {
  switch (trouble.code) {
    case 'no-such-stock':
      return told(
        `there is no label stock '${trouble.stock}'`,
        `${say('labels stocks')} shows their measures, and where to put your own`,
        [`known: ${trouble.known.join(', ')}`],
      )
    case 'not-on-a-roll':
      return told(
        `this needs a whole sheet, and cannot go out as ${trouble.form}`,
        'leave the printer out, or say "on a4"',
      )
    case 'stock-is-no-roll':
      return told(
        `${trouble.stock} is a sheet, and ${trouble.form} is for rolls`,
        `say the roll with "on", as in ${say('labels 3 on roll-64x34')}`,
      )
    case 'no-copies':
      return told('no copies would be nothing', 'say how many copies, or leave it out')
    case 'only-for-labels':
      return told(`"${trouble.what}" is for labels, and this is printed on whole pages`, 'leave it out')
    case 'too-many-dots':
      return told(
        `a label of ${trouble.width} x ${trouble.height} dots at ${trouble.dpi} dpi is more than can be drawn`,
        'use a smaller label, a lower resolution, or a PDF',
      )
    case 'no-standard-output':
      return told(
        'nothing can go to standard output from here',
        `name a file, or say it on the command line: ${say('putback labels 3 to -')}`,
      )
    case 'part-missing':
      return told(
        `a part of putback is not there, ${trouble.part}, so nothing can be printed`,
        'install putback again; the record is not touched by that',
      )
    case 'one-label-only':
      return told(
        `one ${trouble.form} holds one label, and ${trouble.count} were asked for`,
        'ask for one, or for a PDF with "to labels.pdf"',
      )
    case 'nothing-to-print':
      return told(
        `there is no ${trouble.what} to print a label for`,
        `${say('labels blank 24')} prints unused ones beforehand`,
      )
    case 'label-still-unused':
      return told(
        `label ${trouble.label} is unused: there is no container yet that it could tell of`,
        `${say(`labels blank again ${trouble.label}`)} prints it as it is`,
      )
    case 'not-unused':
      return told(
        `no label of ${trouble.from} to ${trouble.to} is unused: they are in use, void, or were never dealt`,
        `${say('labels 3')} prints the label of a container, ${say('labels blank 24')} deals new numbers`,
      )
    case 'no-connection':
      return told(
        `${trouble.name} is no hose, cable or wire with ends`,
        `one is written with its ends: ${say('off hose: pump outlet > radiator top')}`,
      )
    case 'at-home':
      return told(
        `${trouble.name} is on the machine`,
        'flags are for what is off, so that it finds its way back',
      )
    case 'not-usual':
      return told(
        trouble.what === 'file'
          ? 'a file cannot be usual: the second label would find its name taken'
          : `"${trouble.what}" is said each time`,
        'usual can be a stock, a shift, a resolution, and a printer with "to tcp HOST" or "to device PATH"; "labels usual none" forgets it',
      )
    case 'command-refused':
      return trouble.told
    case 'labels-not-drawn':
      return labelsNotDrawn(trouble.refusals)
    case 'not-sent':
      return notSent(trouble)
    case 'no-such-label':
      return told(
        `there is no label ${trouble.from} on such a sheet`,
        `they are counted by rows, 1 to ${trouble.most}`,
      )
    case 'shift-too-far':
      return told(
        `a shift of more than ${trouble.most} mm is too far`,
        `${say('labels calibration')} prints rulers to measure it by`,
      )
    default:
      return layoutTold(trouble)
  }
}

function labelsNotDrawn(refusals: readonly LayoutRefusal[]): Told {
  const all = refusals.map(layoutTold)
  const cures = [...new Set(all.map(({ cure }) => cure))]
  const more = all.length > most ? [`and ${all.length - most} more`] : []
  return told(`${all.length} labels cannot be drawn`, cures.join('; or '), [
    ...all.slice(0, most).map(({ what }) => what),
    ...more,
  ])
}

const most = 12

function layoutTold(trouble: LayoutRefusal): Told {
  switch (trouble.code) {
    case 'no-glyph':
      return told(
        `${trouble.label} cannot be drawn: the fonts have no ${trouble.characters.map(characterName).join(', ')}`,
        `give it another name, as with ${say('rename p3 to oil cap')}, or write this label by hand`,
      )
    case 'symbol-too-small':
      return told(
        `${trouble.label} would get a symbol that no camera reads: its place is ${millimetres(trouble.room)} wide, ${millimetres(trouble.needed)} are needed at ${trouble.dpi} dpi`,
        'use a larger label, or a printer of higher resolution',
      )
    case 'label-too-small':
      return told(
        `${trouble.label} would not be legible on ${millimetres(trouble.width)} x ${millimetres(trouble.height)}`,
        `use a larger label, as in ${say('on a4-8')}; ${say('labels stocks')} shows those there are`,
      )
    case 'flag-too-short':
      return told(
        `${trouble.label} does not go round: ${millimetres(trouble.width)} long, ${millimetres(trouble.needed)} are needed for a hose of ${millimetres(trouble.hose)}`,
        `use a longer label, as in ${say('on flag-100x25')} or ${say('on a4-8')}`,
      )
    default:
      return trouble satisfies never
  }
}

function notSent({ why, where, partly, kind, dealt }: Extract<PrintTrouble, { code: 'not-sent' }>): Told {
  const reason = REASONS[why] ?? why
  const lines = [
    ...(partly ? ['A part may have been printed: look before printing again.'] : []),
    ...(dealt
      ? [
          `Labels ${dealt.from} to ${dealt.to} are dealt to this run: ${say(`labels blank again ${dealt.from}..${dealt.to}`)} prints them.`,
        ]
      : []),
  ]
  const cure =
    kind === 'tcp'
      ? 'look whether the printer is on, and its address and port'
      : kind === 'device'
        ? 'look at the cable and the name of the device, and whether you may write to it'
        : 'say another file'
  return told(`${kind === 'file' ? 'not written' : 'not sent'} to ${where}: ${reason}`, cure, lines)
}

const REASONS: Record<string, string> = {
  exists: 'there is such a file already, and it is not written over',
  'no-device': 'that is a file or a folder, not a device',
  'no-answer': 'it does not answer',
  ENOENT: 'there is no such place',
  ENXIO: 'there is no such device',
  ENODEV: 'there is no such device',
  ENOTDIR: 'one of its folders is a file',
  EEXIST: 'one of its folders is a file',
  EISDIR: 'that is a folder',
  ENAMETOOLONG: 'its name is too long',
  EINVAL: 'no file can have that name',
  EPERM: 'you may not write there',
  EBUSY: 'another program is using it',
  EIO: 'the disk or the device failed',
  EDQUOT: 'your share of the disk is full',
  EACCES: 'you may not write there',
  ENOSPC: 'the disk is full',
  EROFS: 'it may only be read',
  ECONNREFUSED: 'nothing takes prints there',
  ENOTFOUND: 'there is no such host',
  EAI_AGAIN: 'the name of the host cannot be looked up now',
  EHOSTUNREACH: 'it cannot be reached',
  ENETUNREACH: 'it cannot be reached',
  ETIMEDOUT: 'it does not answer',
  ECONNRESET: 'it broke off',
  EPIPE: 'it broke off',
}

/** What was drawn and where it is, line by line. */
export function printedText({
  title,
  count,
  unit,
  stock,
  form,
  kind,
  where,
  notes,
}: {
  title: string
  count: number
  unit: 'label' | 'page'
  stock: string
  form: PrintForm
  kind: PrintTarget['target']
  where: string
  notes: readonly string[]
}): string[] {
  // A printer says nothing back: that it printed, nobody here knows.
  const isSent = kind === 'tcp' || kind === 'device'
  return [
    `${isSent ? 'sent' : 'drawn'}: ${title}, ${counted(count, unit)} as ${form} on ${stock}`,
    `    ${isSent ? 'to' : 'in'} ${where}`,
    ...notes.map((note) => `    ${note}`),
  ]
}

/** What is used where nothing else is said. */
export function howText({ stock, dpi, shift, to, form }: HowPrinted): string {
  const said = [
    ...(stock === undefined ? [] : [`on ${stock}`]),
    ...(form === undefined ? [] : [`as ${form}`]),
    ...(dpi === undefined ? [] : [`at ${dpi} dpi`]),
    ...(shift === undefined ? [] : [`shifted ${shift.x} mm right, ${shift.y} mm down`]),
    ...(to?.target === 'tcp' ? [`to tcp ${to.host}:${to.port}`] : []),
    ...(to?.target === 'device' ? [`to device ${to.path}`] : []),
  ]
  return said.length === 0 ? 'nothing is usual yet: PDF on a4-24, in a file' : `usual: ${said.join(', ')}`
}

/** A file of a stock that cannot be used. */
export function badStockText(
  file: string,
  why: 'not-json' | 'unreadable' | 'too-large' | { faults: StockFault[] },
): string {
  if (why === 'not-json') return `${file} is no JSON, and is passed over.`
  if (why === 'unreadable') return `${file} cannot be read, and is passed over.`
  if (why === 'too-large') return `${file} is far too large for a stock, and is passed over.`
  const more = why.faults.length - MOST_FAULTS
  const faults = why.faults.slice(0, MOST_FAULTS).map(faultText)
  return `${file} is passed over: ${[...faults, ...(more > 0 ? [`and ${more} more`] : [])].join('; ')}.`
}

/** As many as a stock has fields, and a few that nobody knows. */
const MOST_FAULTS = 15

function faultText(fault: StockFault): string {
  switch (fault.wrong) {
    case 'missing':
      return `${fault.at} is missing`
    case 'not-known':
      return `${fault.at} is not known`
    case 'not-as-asked':
      return `${fault.at || 'the whole'} is not of the right kind`
    case 'too-small':
      return `${fault.at} is below ${fault.least}`
    case 'too-large':
      return `${fault.at} is above ${fault.most}`
    case 'beyond-page':
      return `the ${fault.at} reach ${millimetres(fault.reach)}, and the page ends at ${millimetres(fault.page)}`
    default:
      return fault satisfies never
  }
}
