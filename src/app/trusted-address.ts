type TrustedTypesLike = {
  createPolicy(
    name: string,
    rules: { createScriptURL(url: string): string },
  ): { createScriptURL(url: string): string };
};

/** Under Trusted Types a worker's address must come out of a policy; this one lets this one address through. */
export function trustedAddress(policyName: string, url: string): string {
  const types = (globalThis as { trustedTypes?: TrustedTypesLike }).trustedTypes;
  const policy = types?.createPolicy(policyName, { createScriptURL: () => url });
  return policy?.createScriptURL(url) ?? url;
}
