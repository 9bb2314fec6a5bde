/** The folder of a home that back-ups go into when nobody says where: no job gets its name. */
export const BACKUPS_NAME = 'backups'

const MAX_LENGTH = 40

/**
 * A folder name for a job's name: lower-case letters, digits and hyphens, at most 40, never empty, and none that
 * Windows reserves for devices or back-ups lie in. Letters with marks lose them; what has no Latin letter is dropped.
 */
export function slugOf(name: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]/gu, (character) => latin[character] ?? (/\p{M}|['’]/u.test(character) ? '' : '-'))
  const slug = trimmed(words.replace(/-+/g, '-'), MAX_LENGTH) || 'job'
  return reserved.test(slug) || slug === BACKUPS_NAME ? `job-${slug}` : slug
}

/** The slug with a number behind it, still at most 40 characters long. */
export function numberedSlug(slug: string, number: number): string {
  return `${trimmed(slug, MAX_LENGTH - `-${number}`.length)}-${number}`
}

// Letters of their own, which Unicode does not take apart.
const latin: Record<string, string> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ħ: 'h',
  ı: 'i',
  ł: 'l',
  ŋ: 'ng',
  ŧ: 't',
  þ: 'th',
}

const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/

function trimmed(slug: string, length: number): string {
  return slug.replace(/^-+/, '').slice(0, length).replace(/-+$/, '')
}
