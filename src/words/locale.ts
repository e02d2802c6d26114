/** The locale if this engine takes it, else English: some phones report tags that make Intl throw. */
export function safeLocale(locale: string): string {
  try {
    return Intl.NumberFormat.supportedLocalesOf(locale)[0] ?? 'en';
  } catch {
    return 'en';
  }
}
