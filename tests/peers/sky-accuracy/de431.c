/* Apparent Sun and Moon in ICRS axes from the DE431 files that the npm package swisseph carries (light-time and aberration, no
   precession): "days from J2000.0 TT" a line in, six coordinates in au a line out. Usage: de431 FOLDER_OF_SE1_FILES */
#include <math.h>
#include <stdio.h>
#include "swephexp.h"

int main(int argc, char **argv)
{
    if (argc != 2) return 2;
    swe_set_ephe_path(argv[1]);
    const int32 flags = SEFLG_SWIEPH | SEFLG_XYZ | SEFLG_EQUATORIAL | SEFLG_J2000 | SEFLG_NONUT | SEFLG_ICRS | SEFLG_NOGDEFL;
    double days, sun[6], moon[6], geometric[6];
    char message[AS_MAXCH];
    while (scanf("%lf", &days) == 1) {
        int32 a = swe_calc(2451545.0 + days, SE_SUN, flags, sun, message);
        int32 b = swe_calc(2451545.0 + days, SE_MOON, flags, moon, message);
        /* Its aberration also scales the vector, by up to 1e-4; the Moon's distance has to be the geometric one. */
        int32 c = swe_calc(2451545.0 + days, SE_MOON, flags | SEFLG_TRUEPOS | SEFLG_NOABERR, geometric, message);
        double scale = sqrt((geometric[0] * geometric[0] + geometric[1] * geometric[1] + geometric[2] * geometric[2]) /
                            (moon[0] * moon[0] + moon[1] * moon[1] + moon[2] * moon[2]));
        /* It falls back to a lesser theory when a file is missing, and says so in the flags only. */
        if (!(a & b & c & SEFLG_SWIEPH)) { fprintf(stderr, "%s\n", message); return 1; }
        printf("%.17g %.17g %.17g %.17g %.17g %.17g\n", sun[0], sun[1], sun[2], scale * moon[0], scale * moon[1],
               scale * moon[2]);
    }
    return 0;
}
