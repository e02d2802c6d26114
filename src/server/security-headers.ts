// 'none' where nothing is needed; data: and blob: stay out until something needs them.
const contentSecurityPolicy = [
  "default-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  // The page registers its service worker through this one policy (src/app/update.ts).
  'trusted-types sagline-worker',
].join('; ');

const deniedFeatures = [
  'accelerometer',
  'autoplay',
  'bluetooth',
  'camera',
  'display-capture',
  'geolocation',
  'gyroscope',
  'hid',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'serial',
  'usb',
];

/** The headers of every answer, errors too; a promise of TLS only where there is TLS. */
export function securityHeaders(overTls: boolean): Readonly<Record<string, string>> {
  return {
    'content-security-policy': contentSecurityPolicy,
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': deniedFeatures.map((feature) => `${feature}=()`).join(', '),
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
    ...(overTls ? { 'strict-transport-security': 'max-age=31536000' } : {}),
  };
}
