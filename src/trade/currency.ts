// ISO 4217, table A.1: the codes of money that is paid with. Funds, precious metals and codes for tests are left out.
const codes = new Set(
  [
    'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY',
    'COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS',
    'INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP',
    'MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR',
    'SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV',
    'WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG',
  ].flatMap((row) => row.split(' ')),
)

// ISO 4217, table A.1, minor unit; all others have two digits.
const otherDigits = new Map<string | null, number>([
  ...'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF ₩ ₫'
    .split(' ')
    .map((code) => [code, 0] as const),
  ...'BHD IQD JOD KWD LYD OMR TND'.split(' ').map((code) => [code, 3] as const),
])

// Signs that are made of letters: common practice.
const letterSigns = ['kr', 'zł', 'Kč', 'Ft', 'Fr', 'Rs']

// Signs that several currencies share: common practice.
const sharedSigns = new Map([
  ['$', /^(?:..D|ARS|BRL|CLP|COP|CUP|CVE|DOP|MXN|NIO|TOP|UYU)$/],
  ['£', /^(?:EGP|FKP|GBP|GIP|SHP)$/],
  ['¥', /^(?:CNY|JPY)$/],
])

/**
 * A currency as it is written, in capitals where it is a code: `eur` is `EUR`. The euro sign stands for one currency only,
 * and is read as its code; other signs, such as `$`, stay signs. Null for any other text.
 */
export function currencyNamed(text: string): string | null {
  const code = text.toUpperCase()
  if (codes.has(code)) return code
  if (text === '€' || /^euros?$/i.test(text)) return 'EUR'
  if (/^[A-Z]{0,3}\p{Sc}$/u.test(code)) return code
  const bare = text.toLowerCase().replace(/\.$/, '')
  return letterSigns.find((sign) => sign.toLowerCase() === bare) ?? null
}

/** How many digits a currency has behind the point. */
export function minorDigits(currency: string | null): number {
  return otherDigits.get(currency) ?? 2
}

/** Whether the sign is written in front of the amount, as in `$4.50`. */
export function isWrittenInFront(currency: string): boolean {
  return /\p{Sc}$/u.test(currency)
}

/** Whether a sign stands for the currency of a code, among others: `$` for `USD`. */
export function isSignOf(sign: string, code: string): boolean {
  return sharedSigns.get(sign)?.test(code) ?? false
}
