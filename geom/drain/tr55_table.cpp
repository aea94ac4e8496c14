#include "geom/drain/tr55_table.hpp"

#include <array>

namespace yardwright::drain {

namespace {

constexpr std::array type_i{
    UnitPeakRow{0.10, 2.30550, -0.51429, -0.11750}, UnitPeakRow{0.20, 2.23537, -0.50387, -0.08929},
    UnitPeakRow{0.25, 2.18219, -0.48488, -0.06589}, UnitPeakRow{0.30, 2.10624, -0.45695, -0.02835},
    UnitPeakRow{0.35, 2.00303, -0.40769, 0.01983},  UnitPeakRow{0.40, 1.87733, -0.32274, 0.05754},
    UnitPeakRow{0.45, 1.76312, -0.15644, 0.00453},  UnitPeakRow{0.50, 1.67889, -0.06930, 0.00000},
};
constexpr std::array type_ia{
    UnitPeakRow{0.10, 2.03250, -0.31583, -0.13748}, UnitPeakRow{0.20, 1.91978, -0.28215, -0.07020},
    UnitPeakRow{0.25, 1.83842, -0.25543, -0.02597}, UnitPeakRow{0.30, 1.72657, -0.19826, 0.02633},
    UnitPeakRow{0.50, 1.63417, -0.09100, 0.00000},
};
constexpr std::array type_ii{
    UnitPeakRow{0.10, 2.55323, -0.61512, -0.16403}, UnitPeakRow{0.30, 2.46532, -0.62257, -0.11657},
    UnitPeakRow{0.35, 2.41896, -0.61594, -0.08820}, UnitPeakRow{0.40, 2.36409, -0.59857, -0.05621},
    UnitPeakRow{0.45, 2.29238, -0.57005, -0.02281}, UnitPeakRow{0.50, 2.20282, -0.51599, -0.01259},
};
constexpr std::array type_iii{
    UnitPeakRow{0.10, 2.47317, -0.51848, -0.17083}, UnitPeakRow{0.30, 2.39628, -0.51202, -0.13245},
    UnitPeakRow{0.35, 2.35477, -0.49735, -0.11985}, UnitPeakRow{0.40, 2.30726, -0.46541, -0.11094},
    UnitPeakRow{0.45, 2.24876, -0.41314, -0.11508}, UnitPeakRow{0.50, 2.17772, -0.36803, -0.09525},
};

}  // namespace

std::span<const UnitPeakRow> unit_peak_rows(StormType type) {
  switch (type) {
    case StormType::i: return type_i;
    case StormType::ia: return type_ia;
    case StormType::iii: return type_iii;
    case StormType::ii: return type_ii;
    case StormType::own: break;
  }
  return {};
}

}  // namespace yardwright::drain
