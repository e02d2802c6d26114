import { describe, expect, test } from 'vitest';
import { readSettings } from '../../src/server/settings.ts';

describe('settings', () => {
  test('[SV9] without settings the server is for this machine alone', () => {
    expect(readSettings({}, '/sagline')).toEqual({
      ok: true,
      value: {
        host: '127.0.0.1',
        port: 8080,
        dataDir: '/sagline/data',
        appDir: '/sagline/dist',
        tls: undefined,
      },
    });
  });

  test('[SV9] the environment decides', () => {
    const env = { PORT: '0', HOST: '::', DATA_DIR: '/d', APP_DIR: '/a', TLS_CERT: 'c', TLS_KEY: 'k' };
    expect(readSettings(env, '/sagline')).toEqual({
      ok: true,
      value: { port: 0, host: '::', dataDir: '/d', appDir: '/a', tls: { certPath: 'c', keyPath: 'k' } },
    });
  });

  test.each(['x', '-1', '80.5', '65536', '0x50', ' 80', '1e3'])(
    '[SV9] PORT %j is refused in one sentence',
    (PORT) => {
      const settings = readSettings({ PORT }, '/sagline');
      expect(settings.ok).toBe(false);
      expect(!settings.ok && settings.error).toContain(JSON.stringify(PORT));
    },
  );

  test.each([{ TLS_CERT: 'c' }, { TLS_KEY: 'k' }])('[SV9] %j alone is refused', (env) => {
    expect(readSettings(env, '/sagline').ok).toBe(false);
  });
});
