#include "sheets/LabelKeys.h"

#include <sstream>

namespace rackbook {

void addLabelKeys(std::vector<std::string>& keys, const std::string& prefix,
                  const std::string& words) {
    std::istringstream list(words);
    for (std::string word; list >> word;)
        keys.push_back(prefix.empty() ? word : prefix + "." + word);
}

}  // namespace rackbook
