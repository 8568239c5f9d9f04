#include <libexif/exif-data.h>

#include <limits>
#include <memory>

#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

struct Unref {
    void operator()(ExifData* data) const { exif_data_unref(data); }
};

int orientationIn(ExifData& data) {
    const ExifEntry* entry = exif_content_get_entry(data.ifd[EXIF_IFD_0], EXIF_TAG_ORIENTATION);
    if (entry == nullptr || entry->format != EXIF_FORMAT_SHORT || entry->size < 2)
        return 1;
    const int written = exif_get_short(entry->data, exif_data_get_byte_order(&data));
    return written >= 1 && written <= 8 ? written : 1;
}

// The version of its tags alone says nothing of a place.
bool namesPlaceIn(const ExifData& data) {
    const ExifContent& tags = *data.ifd[EXIF_IFD_GPS];
    for (unsigned int i = 0; i < tags.count; ++i)
        if (tags.entries[i]->tag != EXIF_TAG_GPS_VERSION_ID)
            return true;
    return false;
}

}  // namespace

ExifFacts exifFactsOf(std::string_view exif) {
    ExifFacts facts;
    if (exif.empty() || exif.size() > std::numeric_limits<unsigned int>::max() / 2)
        return facts;
    const std::string block = "Exif" + std::string(2, '\0') + std::string(exif);
    const std::unique_ptr<ExifData, Unref> data(
        exif_data_new_from_data(reinterpret_cast<const unsigned char*>(block.data()),
                                static_cast<unsigned int>(block.size())));
    if (!data)
        return facts;
    facts.orientation = orientationIn(*data);
    facts.hasLocation = namesPlaceIn(*data);
    return facts;
}

}  // namespace rackbook
