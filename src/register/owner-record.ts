import { z } from 'zod';
import { refSchema, refuseInto, requiredTextSchema } from './value-schemas.ts';

export const OWNER_KINDS = ['person', 'association', 'company'] as const;
export const OWNER_CHANNELS = ['mail', 'letter'] as const;
export const OWNER_LANGUAGES = ['en', 'es'] as const;
const EMAIL_REASON = 'not a mail address; write one as name@example.org';

/** Who owns fences and hears of them: by mail or by printed letter, in a language, enrolled or not. */
export const ownerSchema = z
  .object({
    ref: refSchema,
    name: requiredTextSchema(200),
    kind: z.enum(OWNER_KINDS),
    channel: z.enum(OWNER_CHANNELS),
    email: z.email(EMAIL_REASON).max(254, EMAIL_REASON).nullable(),
    postalAddress: requiredTextSchema(500).nullable(),
    language: z.enum(OWNER_LANGUAGES),
    enrolled: z.boolean(),
  })
  .superRefine((owner, context) => {
    const refuse = refuseInto(context);
    if (owner.channel === 'mail' && owner.email === null) {
      refuse('email', 'an owner reached by mail needs a mail address; give one, or set channel to letter');
    }
    if (owner.channel === 'letter' && !owner.postalAddress) {
      refuse('postalAddress', 'an owner reached by letter needs a postal address; give one, or set channel to mail');
    }
  });

export type OwnerRecord = Readonly<z.infer<typeof ownerSchema>>;
