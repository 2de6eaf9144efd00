import '@angular/compiler'
import '@angular/material/prebuilt-themes/azure-blue.css'
import { Component, inject, provideZonelessChangeDetection } from '@angular/core'
import { FormBuilder, ReactiveFormsModule } from '@angular/forms'
import { MatCheckboxModule } from '@angular/material/checkbox'
import { provideNativeDateAdapter } from '@angular/material/core'
import { MatDatepickerModule } from '@angular/material/datepicker'
import { MatInputModule } from '@angular/material/input'
import { MatRadioModule } from '@angular/material/radio'
import { MatSelectModule } from '@angular/material/select'
import { MatSlideToggleModule } from '@angular/material/slide-toggle'
import { MatSliderModule } from '@angular/material/slider'
import { bootstrapApplication } from '@angular/platform-browser'

const iso = (date: Date) =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`

class Page {
  form = inject(FormBuilder).group({
    street: [''],
    flow: [null as number | null],
    date: [null as Date | null],
    range: [''],
    result: [''],
    sealed: [false],
    fan: [false],
    floors: [1],
    comments: [''],
  })
  constructor() {
    window.pageState = () => {
      const { date, ...values } = this.form.value
      return { ...values, date: date ? iso(date) : '' }
    }
  }
}

// Called as a function: the decorator syntax would need a compiler of its own.
const App = Component({
  selector: 'app-page',
  imports: [
    ReactiveFormsModule,
    MatInputModule,
    MatSelectModule,
    MatRadioModule,
    MatCheckboxModule,
    MatSlideToggleModule,
    MatSliderModule,
    MatDatepickerModule,
  ],
  template: `
    <form [formGroup]="form" style="display: grid; width: 400px; padding: 20px">
      <mat-form-field><mat-label>Street address</mat-label><input matInput formControlName="street" /></mat-form-field>
      <mat-form-field><mat-label>CFM50</mat-label><input matInput type="number" formControlName="flow" /></mat-form-field>
      <mat-form-field>
        <mat-label>Test date</mat-label>
        <input matInput [matDatepicker]="picker" formControlName="date" />
        <mat-datepicker-toggle matIconSuffix [for]="picker" />
        <mat-datepicker #picker />
      </mat-form-field>
      <mat-form-field>
        <mat-label>Range</mat-label>
        <mat-select formControlName="range">
          <mat-option value="a">wide range</mat-option>
          <mat-option value="b">middle range</mat-option>
        </mat-select>
      </mat-form-field>
      <span id="result">Result</span>
      <mat-radio-group aria-labelledby="result" formControlName="result">
        <mat-radio-button value="pass">Pass</mat-radio-button>
        <mat-radio-button value="fail">Fail</mat-radio-button>
      </mat-radio-group>
      <mat-checkbox formControlName="sealed">Attic sealed</mat-checkbox>
      <mat-slide-toggle formControlName="fan">Ventilation present</mat-slide-toggle>
      <span id="floors">Stories</span>
      <mat-slider min="1" max="4"><input matSliderThumb aria-labelledby="floors" formControlName="floors" /></mat-slider>
      <mat-form-field><mat-label>Comments</mat-label><textarea matInput formControlName="comments"></textarea></mat-form-field>
    </form>
  `,
})(Page) as typeof Page | undefined

document.body.append(document.createElement('app-page'))
void bootstrapApplication(App ?? Page, { providers: [provideZonelessChangeDetection(), provideNativeDateAdapter()] })
