// 'none' where nothing is needed; data: stays out until something needs it.
const contentSecurityPolicy = [
  "default-src 'self'",
  // Photos are bytes in the phone's storage; to show one they get an address of the page's own.
  "img-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  // Each lets one address through: that of the service worker and of the worker that makes photos smaller.
  'trusted-types sagline-worker sagline-photo-worker',
].join('; ');

/** Where a picture was taken is asked of the phone only when the person wants it noted. */
const deniedFeatures = [
  'accelerometer',
  'autoplay',
  'bluetooth',
  'camera',
  'display-capture',
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
    'permissions-policy': [...deniedFeatures.map((feature) => `${feature}=()`), 'geolocation=(self)'].join(
      ', ',
    ),
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
    ...(overTls ? { 'strict-transport-security': 'max-age=31536000' } : {}),
  };
}
