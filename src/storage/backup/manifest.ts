import { parseJson } from '../files/parse-json.ts'
import { BadArchive, type BadArchiveCode } from './bad-archive.ts'

/** What an archive says of itself: the file `manifest.json` in it. */
export interface Manifest {
  kind: typeof MANIFEST_KIND
  version: number
  /** When it was made, an ISO time, and by which version of the program. */
  made: string
  program: string
  /** The name of the job's folder. */
  folder: string
  job: JobInArchive
  files: FileInArchive[]
  /** What the record names and is not in the archive. */
  missing: MissingPicture[]
}

/** The job as its journal tells it. What its first entry no longer says is null. */
export interface JobInArchive {
  no: number | null
  name: string | null
  /** The id of the first entry: a copy of the same job has the same. */
  id: string | null
  /** How many entries can be read. */
  entries: number
  /** The line that is not what was written, where the journal was hurt when it was put in. */
  hurt: HurtLine | null
}

export interface HurtLine {
  line: number
  why: string
}

export interface FileInArchive {
  name: string
  bytes: number
  sha256: string
  /** A picture whose bytes are not those that the record names. */
  changed?: true
}

export interface MissingPicture {
  name: string
  /** `gone`, `name` for one that no system could take, or the system's error code. */
  why: string
}

const MANIFEST_KIND = 'putback back-up'
const MANIFEST_VERSION = 1

/** A manifest of the kind and the version that this program writes. */
export function manifestOf(about: Omit<Manifest, 'kind' | 'version'>): Manifest {
  return { kind: MANIFEST_KIND, version: MANIFEST_VERSION, ...about }
}

/** The bytes of a manifest. */
export function writeManifest(manifest: Manifest): Buffer {
  return Buffer.from(`${JSON.stringify(manifest)}\n`)
}

/** Reads a manifest of the archive at `path`. Throws BadArchive for anything that this program would not write. */
export function readManifest(bytes: Uint8Array, path: string): Manifest {
  const bad = (code: BadArchiveCode, cause?: unknown) => new BadArchive(code, path, null, cause)
  let raw: unknown
  try {
    raw = parseJson(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch (cause) {
    throw bad('foreign', cause)
  }
  if (!isObject(raw) || raw.kind !== MANIFEST_KIND || !isCount(raw.version)) throw bad('foreign')
  if (raw.version > MANIFEST_VERSION) throw bad('newer')
  if (!isManifest(raw)) throw bad('foreign')
  return raw
}

/** Anything that was read where one of these was written. */
type Raw = Partial<
  Record<
    keyof Manifest | keyof JobInArchive | keyof FileInArchive | keyof HurtLine | keyof MissingPicture,
    unknown
  >
>

function isManifest(raw: Raw): raw is Manifest {
  return (
    hasOnly(raw, ['kind', 'version', 'made', 'program', 'folder', 'job', 'files', 'missing']) &&
    isText(raw.made) &&
    isText(raw.program) &&
    isText(raw.folder) &&
    isJob(raw.job) &&
    isListOf(raw.files, isFile) &&
    isListOf(raw.missing, isMissing)
  )
}

function isJob(raw: unknown): boolean {
  return (
    isObject(raw) &&
    hasOnly(raw, ['no', 'name', 'id', 'entries', 'hurt']) &&
    (raw.no === null || isCount(raw.no)) &&
    (raw.name === null || isText(raw.name)) &&
    (raw.id === null || isText(raw.id)) &&
    isCount(raw.entries) &&
    (raw.hurt === null || isHurt(raw.hurt))
  )
}

function isHurt(raw: unknown): boolean {
  return isObject(raw) && hasOnly(raw, ['line', 'why']) && isCount(raw.line) && isText(raw.why)
}

function isFile(raw: unknown): boolean {
  return (
    isObject(raw) &&
    hasOnly(raw, ['name', 'bytes', 'sha256', 'changed']) &&
    isText(raw.name) &&
    isCount(raw.bytes) &&
    /^[0-9a-f]{64}$/.test(String(raw.sha256)) &&
    (raw.changed === undefined || raw.changed === true)
  )
}

function isMissing(raw: unknown): boolean {
  return isObject(raw) && hasOnly(raw, ['name', 'why']) && isText(raw.name) && isText(raw.why)
}

function isObject(value: unknown): value is Raw {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function hasOnly(value: Raw, keys: readonly string[]): boolean {
  return Object.keys(value).every((key) => keys.includes(key))
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && Number(value) >= 0
}

function isText(value: unknown): boolean {
  return typeof value === 'string' && value.length <= MOST_CHARACTERS
}

function isListOf(value: unknown, isOne: (one: unknown) => boolean): boolean {
  return Array.isArray(value) && value.every(isOne)
}

const MOST_CHARACTERS = 1000
