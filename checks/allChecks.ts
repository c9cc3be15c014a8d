import { ashraeEvaporation } from "./ashrae-evaporation.ts";
import type { Check } from "./check.ts";
import { colebrookWhite } from "./colebrook-white.ts";
import { craneTp410 } from "./crane-tp-410.ts";
import { drainingVessels } from "./draining-vessels.ts";
import { gravityDrains } from "./gravity-drains.ts";
import { hooper1981 } from "./hooper-1981.ts";
import { iso1438 } from "./iso-1438.ts";
import { iso9906 } from "./iso-9906.ts";
import { nspc2006 } from "./nspc-2006.ts";
import { powerCutOdex } from "./power-cut-odex.ts";
import { sharqawy2010 } from "./sharqawy-2010.ts";
import { soundAndHeat } from "./sound-and-heat.ts";
import { teos10 } from "./teos-10.ts";
import { unesco44 } from "./unesco-44.ts";
import { villemonte1947 } from "./villemonte-1947.ts";
import { wagnerPruss } from "./wagner-pruss.ts";

/** Every check of a formula, by its source, in the order of the printed table. */
export const allChecks: Readonly<Record<string, readonly Check[]>> = {
  "unesco-44": unesco44,
  "teos-10": teos10,
  "sharqawy-2010": sharqawy2010,
  "wagner-pruss": wagnerPruss,
  "colebrook-white": colebrookWhite,
  "crane-tp-410": craneTp410,
  "hooper-1981": hooper1981,
  "iso-9906": iso9906,
  "iso-1438": iso1438,
  "villemonte-1947": villemonte1947,
  "draining-vessels": drainingVessels,
  "power-cut-odex": powerCutOdex,
  "nspc-2006": nspc2006,
  "gravity-drains": gravityDrains,
  "sound-and-heat": soundAndHeat,
  "ashrae-evaporation": ashraeEvaporation,
};
