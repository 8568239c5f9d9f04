// What must hold inside what is recorded about light: the sky, measured light, glass.
#pragma once

#include <vector>

#include "records/Book.h"
#include "records/Invariants.h"
#include "records/Metering.h"
#include "records/Place.h"
#include "records/Weather.h"

namespace rackbook {

// Pointers are those of the record that holds the list: "/monthlySkies/0/month".
// Of house rules that only hold together: shares of skies, chances, whole numbers of looks.
std::vector<Complaint> lightRuleComplaints(const std::vector<HouseRule>& rules);
std::vector<Complaint> monthlySkyComplaints(const std::vector<MonthlySky>& skies);
std::vector<Complaint> lightComplaints(const std::vector<Light>& light);
std::vector<Complaint> weatherComplaints(const Weather& weather);
std::vector<Complaint> meteringComplaints(const Metering& metering);

}  // namespace rackbook
