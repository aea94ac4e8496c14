#include "tests/geom/io/picture_files.hpp"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <random>

namespace yardwright::tests {

void write(const PictureBytes& picture, const char* driver, const std::filesystem::path& path) {
  GDALAllRegister();
  GDALDriver* memory = GetGDALDriverManager()->GetDriverByName("MEM");
  const GDALDatasetUniquePtr made{memory->Create("", picture.wide, picture.high, picture.bands, GDT_Byte, nullptr)};
  const std::size_t count = static_cast<std::size_t>(picture.wide) * static_cast<std::size_t>(picture.high);
  std::vector<std::uint8_t> bytes = picture.bytes;
  for (int band = 1; band <= picture.bands; ++band) {
    const CPLErr wrote = made->GetRasterBand(band)->RasterIO(
        GF_Write, 0, 0, picture.wide, picture.high, bytes.data() + count * (static_cast<std::size_t>(band) - 1),
        picture.wide, picture.high, GDT_Byte, 0, 0, nullptr);
    if (wrote != CE_None) return;
  }
  auto transform = picture.transform;
  if (transform) made->SetGeoTransform(transform->data());
  OGRSpatialReference system;
  if (picture.epsg != 0 && system.importFromEPSG(picture.epsg) == OGRERR_NONE) made->SetSpatialRef(&system);
  const GDALDatasetUniquePtr copied{GetGDALDriverManager()->GetDriverByName(driver)->CreateCopy(
      path.c_str(), made.get(), FALSE, nullptr, nullptr, nullptr)};
}

PictureBytes plain_picture(int wide, int high, std::uint8_t red, std::uint8_t green, std::uint8_t blue) {
  PictureBytes picture{wide, high, 3, {}};
  const std::size_t count = static_cast<std::size_t>(wide) * static_cast<std::size_t>(high);
  for (const std::uint8_t value : {red, green, blue}) picture.bytes.insert(picture.bytes.end(), count, value);
  return picture;
}

PictureFolder::PictureFolder()
    : path{std::filesystem::temp_directory_path() / ("pictures-" + std::to_string(std::random_device{}()))} {
  std::filesystem::create_directories(path);
}
PictureFolder::~PictureFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path, ignored);
}

}  // namespace yardwright::tests
