#include "geom/io/picture_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>

#include "geom/io/gdal_handles.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright {

namespace {

namespace fs = std::filesystem;

constexpr const char* other_picture = "give a PNG, a JPEG or a GeoTIFF";

using Channel = std::vector<std::uint16_t>;

/// A picture that is being read: its bands at the size that is kept.
struct Reading {
  GDALDataset& dataset;
  int wide = 0, high = 0;

  std::size_t count() const { return static_cast<std::size_t>(wide) * static_cast<std::size_t>(high); }
};

Reading reading_of(GDALDataset& dataset) {
  const double longest = std::max(dataset.GetRasterXSize(), dataset.GetRasterYSize());
  const double factor = std::min(1.0, longest_picture_side_px / longest);
  const auto shown = [factor](int px) { return std::max(1, static_cast<int>(std::lround(px * factor))); };
  return {dataset, shown(dataset.GetRasterXSize()), shown(dataset.GetRasterYSize())};
}

bool read(const Reading& reading, GDALRasterBand& band, Channel& into, bool averaged = true) {
  into.resize(reading.count());
  GDALRasterIOExtraArg extra;
  INIT_RASTERIO_EXTRA_ARG(extra);
  extra.eResampleAlg = averaged ? GRIORA_Average : GRIORA_NearestNeighbour;
  return band.RasterIO(GF_Read, 0, 0, reading.dataset.GetRasterXSize(), reading.dataset.GetRasterYSize(), into.data(),
                       reading.wide, reading.high, GDT_UInt16, 0, 0, &extra) == CE_None;
}

std::uint32_t colour(std::uint32_t red, std::uint32_t green, std::uint32_t blue, std::uint32_t alpha) {
  return alpha << 24U | blue << 16U | green << 8U | red;
}

/// Numbers that stand for the colours of a table.
bool read_by_table(const Reading& reading, const GDALColorTable& table, std::vector<std::uint32_t>& colours) {
  Channel numbers;
  if (!read(reading, *reading.dataset.GetRasterBand(1), numbers, false)) return false;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    GDALColorEntry entry{};
    if (table.GetColorEntryAsRGB(numbers[i], &entry) == 0) continue;
    const auto part = [](short value) { return static_cast<std::uint32_t>(std::clamp<short>(value, 0, 255)); };
    const GDALColorEntry* with_alpha = table.GetColorEntry(numbers[i]);
    colours[i] = colour(part(entry.c1), part(entry.c2), part(entry.c3), part(with_alpha->c4));
  }
  return true;
}

/// What turns a band's numbers into 0 to 255: bytes are kept, longer numbers stretched to the brightest that is there.
double stretch_of(GDALDataType type, const std::vector<Channel>& channels) {
  if (type == GDT_Byte) return 1;
  std::uint16_t brightest = 1;
  for (const Channel& channel : channels) brightest = std::max(brightest, *std::ranges::max_element(channel));
  return 255.0 / brightest;
}

/// Opaque where any of the colour bands has a value.
bool read_alpha(const Reading& reading, int bands, Channel& alpha) {
  alpha.assign(reading.count(), 0);
  Channel mask;
  for (int band = 1; band <= bands; ++band) {
    if (!read(reading, *reading.dataset.GetRasterBand(band)->GetMaskBand(), mask)) return false;
    for (std::size_t i = 0; i < mask.size(); ++i) alpha[i] = std::max(alpha[i], std::min<std::uint16_t>(mask[i], 255));
  }
  return true;
}

/// One band is grey, three or more are red, green and blue.
bool read_bands(const Reading& reading, std::vector<std::uint32_t>& colours) {
  const int bands = reading.dataset.GetRasterCount() >= 3 ? 3 : 1;
  std::vector<Channel> channels(static_cast<std::size_t>(bands));
  for (int band = 1; band <= bands; ++band) {
    if (!read(reading, *reading.dataset.GetRasterBand(band), channels[static_cast<std::size_t>(band - 1)]))
      return false;
  }
  Channel alpha;
  if (!read_alpha(reading, bands, alpha)) return false;
  const double stretch = stretch_of(reading.dataset.GetRasterBand(1)->GetRasterDataType(), channels);
  const auto part = [stretch](std::uint16_t value) { return static_cast<std::uint32_t>(std::lround(value * stretch)); };
  for (std::size_t i = 0; i < colours.size(); ++i) {
    const auto of_band = [&](int band) {
      return part(channels[static_cast<std::size_t>(std::min(band, bands - 1))][i]);
    };
    colours[i] = colour(of_band(0), of_band(1), of_band(2), alpha[i]);
  }
  return true;
}

Expected<GdalDataset> opened(const fs::path& file) {
  const QuietGdal quiet;
  const std::string where = file.filename().string();
  std::error_code error;
  if (!fs::is_regular_file(file, error))
    return refused("is no file that can be read", where, "check its name and folder");
  if (fs::file_size(file, error) > most_picture_bytes)
    return refused("is larger than 1 GB", where, "cut it to the yard");
  const char* const drivers[] = {"PNG", "JPEG", "GTiff", nullptr};
  const char* const no_siblings[] = {nullptr};  // nothing beside the file is to change what it says
  GdalDataset dataset{
      GDALDataset::Open(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers, nullptr, no_siblings)};
  if (!dataset || dataset->GetRasterCount() < 1) return refused("is no picture that can be read", where, other_picture);
  if (double{1} * dataset->GetRasterXSize() * dataset->GetRasterYSize() > most_picture_pixels) {
    return refused(fmt::format("has {} x {} pixels, more than a thousand million", dataset->GetRasterXSize(),
                               dataset->GetRasterYSize()),
                   where, "cut it to the yard");
  }
  return dataset;
}

/// A sentence where the numbers of the file are not colours; empty where they are.
std::string what_is_no_colour(GDALRasterBand& band) {
  const GDALDataType type = band.GetRasterDataType();
  if (type != GDT_Byte && type != GDT_UInt16) return "holds measured numbers and no colours, as levels do";
  if (band.GetColorInterpretation() == GCI_CyanBand) return "is in the colours of a printing press";
  return "";
}

bool same_bytes(const fs::path& a, const fs::path& b) {
  std::error_code error;
  if (fs::equivalent(a, b, error)) return true;
  if (fs::file_size(a, error) != fs::file_size(b, error)) return false;
  std::ifstream left{a, std::ios::binary}, right{b, std::ios::binary};
  return std::equal(std::istreambuf_iterator<char>{left}, {}, std::istreambuf_iterator<char>{right});
}

/// "yard.png", else "yard-2.png", "yard-3.png" ...: the first name that is free or holds the same bytes.
std::string free_name(const fs::path& file, const fs::path& folder) {
  std::string name = file.filename().string();
  for (int number = 2; fs::exists(folder / name) && !same_bytes(file, folder / name); ++number) {
    name = fmt::format("{}-{}{}", file.stem().string(), number, file.extension().string());
  }
  return name;
}

}  // namespace

bool is_picture_name(const fs::path& file) {
  std::string ending = file.extension().string();
  std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending == ".png" || ending == ".jpg" || ending == ".jpeg" || ending == ".tif" || ending == ".tiff";
}

Expected<Pixels> read_pixels(const fs::path& file) {
  const QuietGdal quiet;
  const std::string where = file.filename().string();
  const auto dataset = opened(file);
  if (!dataset) return tl::unexpected{dataset.error()};
  GDALRasterBand& first = *(*dataset)->GetRasterBand(1);
  if (const std::string wrong = what_is_no_colour(first); !wrong.empty()) return refused(wrong, where, other_picture);
  const Reading reading = reading_of(**dataset);
  std::vector<std::uint32_t> colours(reading.count());
  const GDALColorTable* table = first.GetColorTable();
  const bool whole = table != nullptr ? read_by_table(reading, *table, colours) : read_bands(reading, colours);
  if (!whole) return refused("breaks off or is damaged", where, "make it anew");
  return Pixels{reading.wide, reading.high, std::move(colours)};
}

Expected<FileBeside> bring_beside(const fs::path& file, const fs::path& site_file) {
  const fs::path folder = site_file.parent_path().empty() ? fs::path{"."} : site_file.parent_path();
  if (const auto picture = opened(file); !picture) return tl::unexpected{picture.error()};
  if (!is_plain_file_name(file.filename().string()))
    return refused("has a name that a site file cannot hold", file.filename().string(), "give it a plain name");
  const std::string name = free_name(file, folder);
  if (fs::exists(folder / name)) return FileBeside{name, false};
  const fs::path temporary = temporary_beside(folder / name);
  std::error_code failed;
  fs::copy_file(file, temporary, failed);
  if (!failed) {
    if (const auto placed = put_in_place(temporary, folder / name); !placed) return tl::unexpected{placed.error()};
    return FileBeside{name, true};
  }
  std::error_code ignored;
  fs::remove(temporary, ignored);
  return refused("cannot be copied beside the site file: " + failed.message(), name,
                 "check that its folder may be written to and has room");
}

}  // namespace yardwright
