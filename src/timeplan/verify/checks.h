// The checks the judge runs, one idea a file. Each reads the case and reports what is broken; none
// changes anything else.
#pragma once

#include "timeplan/verify/case.h"

namespace timeplan::judge {

void check_attention(Case&);    ///< A1, A2, A3, Y9
void check_waits(Case&);        ///< L1, P1, W7, W8, H5, H7, K7, Y5, C2, C3
void check_windows(Case&);      ///< W1, W2, W3 (cooks), W6, Y4
void check_serving(Case&);      ///< S2, S4, S6, K5, Y6, Y12
void check_holds(Case&);        ///< S3
void check_vessels(Case&);      ///< O1, O2, O3 (settings), O8, Y7
void check_ovens(Case&);        ///< O3, O4, O5, O6, O7
void check_shared(Case&);       ///< K4, K6, K7 and where hands are washed
void check_kit(Case&);          ///< K1, K2
void check_hygiene(Case&);      ///< H2, H3
void check_adults(Case&);       ///< V1 to V5, W3, W5
void check_house_rules(Case&);  ///< Y8, Y11
void check_waves(Case&);        ///< Y1, Y2, Y3
void check_goals(Case&);        ///< 8.1, G1, G2, Gw, G3, G4, G6, Z5

}  // namespace timeplan::judge
