/** WGS 84 ellipsoid (NGA.STND.0036): normal gravity at the equator, Somigliana's constant, first eccentricity squared. */
const equatorGravity = 9.7803253359;
const somiglianaConstant = 0.00193185265241;
const eccentricitySquared = 0.00669437999013;

/** Free-air gradient in m/s² a metre, as in the series of the National Physical Laboratory (Kaye & Laby). */
const freeAirGradient = 3.086e-6;

/**
 * Normal gravity in m/s² at a place: Somigliana's formula on the WGS 84 ellipsoid less the free-air decrease with
 * altitude. Real gravity differs from it by up to some parts in 100,000 (rock below, terrain).
 * @param latitudeDegrees −90 to 90; north and south are alike.
 * @param altitudeMetres above sea level, −500 to 9000.
 * @throws RangeError outside these ranges; callers check what people typed first.
 */
export function normalGravity(latitudeDegrees: number, altitudeMetres: number): number {
  if (!(Math.abs(latitudeDegrees) <= 90)) throw new RangeError(`There is no latitude of ${latitudeDegrees} degrees.`);
  if (!(altitudeMetres >= -500 && altitudeMetres <= 9000)) {
    throw new RangeError(`An altitude of ${altitudeMetres} m is not a place for jump testing.`);
  }
  const sineSquared = Math.sin((latitudeDegrees * Math.PI) / 180) ** 2;
  const atSeaLevel =
    (equatorGravity * (1 + somiglianaConstant * sineSquared)) / Math.sqrt(1 - eccentricitySquared * sineSquared);
  return atSeaLevel - freeAirGradient * altitudeMetres;
}
