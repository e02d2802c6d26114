/** The key with which a device signs; its private half can be used and never be read. */
export interface DeviceKey {
  readonly privateKey: CryptoKey;
  readonly publicKey: CryptoKey;
}

/** ECDSA on P-256 with SHA-256 is what RFC 7518 calls ES256. */
export const keyAlgorithm = { name: 'ECDSA', namedCurve: 'P-256' } as const;
export const signAlgorithm = { name: 'ECDSA', hash: 'SHA-256' } as const;

/** Makes a device's key; the public half can always be read, so the private one is all that `false` locks in. */
export const makeDeviceKey = (): Promise<DeviceKey> =>
  crypto.subtle.generateKey(keyAlgorithm, false, ['sign', 'verify']);
