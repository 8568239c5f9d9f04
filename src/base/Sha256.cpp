#include "base/Sha256.h"

#include <QByteArrayView>
#include <QCryptographicHash>
#include <QRandomGenerator>

namespace rackbook {

std::string sha256(std::string_view bytes) {
    const QByteArrayView view(bytes.data(), static_cast<qsizetype>(bytes.size()));
    return QCryptographicHash::hash(view, QCryptographicHash::Sha256).toHex().toStdString();
}

std::string randomHex(int count) {
    QByteArray bytes(count, Qt::Uninitialized);
    auto* source = QRandomGenerator::system();
    for (char& byte : bytes)
        byte = static_cast<char>(source->bounded(256));
    return bytes.toHex().toStdString();
}

}  // namespace rackbook
