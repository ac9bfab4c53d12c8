/** `reckon volume`: mercury by volume, with the uncertainty its exact derivative gives. */
import { bad, good, problem } from '../result.ts';
import { liquidFromC, liquidToC, massByVolumeG, mercuryDensity, uOfVolumeG } from '../volume.ts';
import { z } from '../zod.ts';
import { orReason } from './answer.ts';
import { anyNumber, millilitres, topic, uncertainty } from './input.ts';

const schema = z.strictObject({
  volume: millilitres,
  volume_u_ml: uncertainty.optional(),
  temperature_c: anyNumber,
  temperature_u_c: uncertainty.optional(),
});

export const volumeTopic = topic(schema, (input) => {
  const temperatureC = input.temperature_c;
  if (temperatureC < liquidFromC || temperatureC > liquidToC)
    return bad(problem('not-liquid', 'temperature_c', { from: liquidFromC, to: liquidToC }));
  const volume = {
    volumeMl: input.volume,
    temperatureC,
    volumeUMl: input.volume_u_ml,
    temperatureUC: input.temperature_u_c,
  };
  return good({
    g: massByVolumeG(volume),
    u_g: orReason(uOfVolumeG(volume), 'no-volume-uncertainty'),
    density_g_ml: mercuryDensity(temperatureC),
  });
});
