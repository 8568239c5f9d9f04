#include "exchange/LinkedTerms.h"

namespace rackbook {

Tree linkedTerm(const LinkedTerm& term, const char* type) {
    Tree tree = Tree::object();
    tree.set("id", std::string("http://vocab.getty.edu/aat/") + term.number);
    tree.set("type", type);
    tree.set("_label", term.label);
    return tree;
}

Tree classifiedAs(const LinkedTerm& term) {
    return Tree::array().add(linkedTerm(term));
}

}  // namespace rackbook
