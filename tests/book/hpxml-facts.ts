/**
 * The part of HPXML 4.2 that a job's tests use: order of elements, which are required, enumerations, number ranges.
 * Facts of the open standard, looked up in its published data types and example files; order of elements that stand in
 * neither from memory. Keys stand in the order in which the elements must.
 */
import { eventTypes } from '../../lib/book/hpxml/standard.ts'

export interface Fact {
  required?: true
  many?: true
  /** The only texts it may hold. */
  oneOf?: readonly string[]
  /** Its text is a number, more than `above` or not less than `least`. */
  number?: { above?: number; least?: number; whole?: true }
  pattern?: RegExp
  /** The attribute it must have: its own id, or one that names another. */
  attribute?: 'id' | 'idref'
  /** What is in it, in order. */
  children?: Readonly<Record<string, Fact>>
  /** What is in it is nobody's business. */
  open?: true
}

const text: Fact = {}
const id: Fact = { required: true, attribute: 'id' }
const reference: Fact = { attribute: 'idref' }
const date: Fact = { pattern: /^\d{4}-\d{2}-\d{2}$/ }
const positive: Fact = { number: { above: 0 } }
const notNegative: Fact = { number: { least: 0 } }
const count: Fact = { number: { least: 0, whole: true } }
const extension: Fact = { open: true }

const leakageUnits = ['CFM', 'CFMnatural', 'ACH', 'ACHnatural'] as const
const ductUnits = ['CFM25', 'CFM50', 'CFM per Std 152', 'Percent'] as const

const person: Fact = {
  required: true,
  children: {
    SystemIdentifier: id,
    Name: { required: true, children: { FirstName: { required: true }, LastName: { required: true } } },
    Telephone: { children: { TelephoneNumber: { required: true } } },
    Email: { children: { EmailAddress: { required: true } } },
    extension,
  },
}

const contractor: Fact = {
  children: {
    ContractorDetails: {
      required: true,
      children: {
        SystemIdentifier: id,
        BusinessInfo: {
          required: true,
          children: {
            SystemIdentifier: id,
            BusinessName: { required: true },
            BusinessContact: { children: { Person: person } },
          },
        },
      },
    },
  },
}

const infiltration: Fact = {
  many: true,
  children: {
    SystemIdentifier: id,
    Date: date,
    BusinessConductingTest: reference,
    IndividualConductingTest: reference,
    OutsideTemperature: { number: {} },
    WindConditions: { oneOf: ['windy', 'normal'] },
    TypeOfInfiltrationMeasurement: { oneOf: ['blower door', 'tracer gas', 'estimate', 'checklist'] },
    TypeOfBlowerDoorTest: { oneOf: ['pressurization', 'depressurization'] },
    HousePressure: positive,
    BuildingAirLeakage: {
      children: { UnitofMeasure: { required: true, oneOf: leakageUnits }, AirLeakage: { required: true, ...positive } },
    },
    EffectiveLeakageArea: positive,
    InfiltrationVolume: positive,
    InfiltrationHeight: positive,
    extension,
  },
}

const ductLeakage: Fact = {
  many: true,
  children: {
    DuctType: { oneOf: ['supply', 'return'] },
    DuctLeakageTestMethod: {
      oneOf: ['duct leakage tester', 'blower door subtract', 'pressure pan', 'visual inspection'],
    },
    DuctLeakage: {
      children: {
        Units: { required: true, oneOf: ductUnits },
        Value: { required: true, ...notNegative },
        TotalOrToOutside: { oneOf: ['to outside', 'total'] },
      },
    },
  },
}

const building: Fact = {
  children: {
    BuildingID: id,
    Site: {
      children: {
        SiteID: id,
        Address: {
          children: {
            Address1: text,
            Address2: text,
            CityMunicipality: text,
            StateCode: text,
            ZipCode: { pattern: /^\d{5}(-\d{4})?$/ },
          },
        },
      },
    },
    ProjectStatus: {
      required: true,
      children: { EventType: { required: true, oneOf: eventTypes }, Date: date, extension },
    },
    BuildingDetails: {
      required: true,
      children: {
        BuildingSummary: {
          children: {
            BuildingConstruction: {
              children: {
                // Types NumberOfFloorsType (a double) and IntegerGreaterThanZero of the schema's HPXMLBaseElements.xsd.
                NumberofConditionedFloorsAboveGrade: positive,
                NumberofBedrooms: count,
                ConditionedFloorArea: positive,
                NumberofStoriesAboveGrade: { number: { above: 0, whole: true } },
                BuildingVolume: positive,
              },
            },
          },
        },
        Enclosure: { children: { AirInfiltration: { children: { AirInfiltrationMeasurement: infiltration } } } },
        Systems: {
          children: {
            HVAC: {
              children: {
                HVACDistribution: {
                  many: true,
                  children: {
                    SystemIdentifier: id,
                    DistributionSystemType: {
                      required: true,
                      children: { AirDistribution: { children: { DuctLeakageMeasurement: ductLeakage } } },
                    },
                  },
                },
              },
            },
          },
        },
      },
    },
  },
}

/** The root element. */
export const root: Fact = {
  children: {
    XMLTransactionHeaderInformation: {
      required: true,
      children: {
        XMLType: { required: true },
        XMLGeneratedBy: { required: true },
        CreatedDateAndTime: {
          required: true,
          pattern: /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})?$/,
        },
        Transaction: { required: true, oneOf: ['create', 'update'] },
      },
    },
    SoftwareInfo: { required: true, children: { SoftwareProgramUsed: text, SoftwareProgramVersion: text } },
    Contractor: contractor,
    Building: { required: true, ...building },
  },
}
